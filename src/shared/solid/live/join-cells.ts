import { propertiesOf, type SolidSums } from '../measure.ts';
import type { MassProperties, Vec3 } from '../placed.ts';
import { rootIn, SIDES, shareArea } from './cell-shells.ts';
import type { CellSolid } from './cell-solid.ts';
import type { Cell } from './cells.ts';

/** A shell that holds less than this share of the largest is dust of rounding, not a piece. */
const DUST = 1e-9;

export interface Filled {
  readonly cell: Cell;
  readonly solid: CellSolid;
}

/** Mass properties of what lies in all cells together; undefined when they are empty. */
export function joinCells(filled: readonly Filled[]): MassProperties | undefined {
  const [first] = filled;
  if (!first) return undefined;
  const at = (of: 'min' | 'max', pick: (...values: number[]) => number) =>
    [0, 1, 2].map((k) => pick(...filled.map(({ solid }) => solid.box[of][k]!))) as unknown as Vec3;
  const box = { min: at('min', Math.min), max: at('max', Math.max) };
  return propertiesOf(added(filled.map(({ solid }) => solid.sums)), box, countPieces(filled));
}

/** All sums about the point of the first. */
function added(sums: readonly SolidSums[]): Omit<SolidSums, 'scale'> {
  const about = sums[0]!.about;
  let [volumeMm3, areaMm2] = [0, 0];
  const first: [number, number, number] = [0, 0, 0];
  const second: [number, number, number, number, number, number] = [0, 0, 0, 0, 0, 0];
  const pairs = [
    [0, 0],
    [1, 1],
    [2, 2],
    [0, 1],
    [1, 2],
    [2, 0],
  ] as const;
  for (const one of sums) {
    const shift = [0, 1, 2].map((k) => one.about[k]! - about[k]!);
    const volume = one.volumeMm3;
    volumeMm3 += volume;
    areaMm2 += one.areaMm2;
    for (const k of [0, 1, 2] as const) first[k] += one.first[k] + volume * shift[k]!;
    pairs.forEach(([i, j], n) => {
      second[n]! +=
        one.second[n]! + shift[i]! * one.first[j] + shift[j]! * one.first[i] + volume * shift[i]! * shift[j]!;
    });
  }
  return { about, volumeMm3, areaMm2, first, second };
}

/** Shells of neighbouring cells hang together where they share an area of the wall between them. */
function countPieces(filled: readonly Filled[]): number {
  const base = new Map<CellSolid, number>();
  const byPlace = new Map<string, CellSolid>();
  let count = 0;
  for (const { cell, solid } of filled) {
    base.set(solid, count);
    byPlace.set(cell.at.join(' '), solid);
    count += solid.shells.volumes.length;
  }
  const group = Uint32Array.from({ length: count }, (_, i) => i);
  for (const { cell, solid } of filled) {
    SIDES.forEach(({ axis, below }, side) => {
      if (!below) return;
      const next = byPlace.get(cell.at.map((n, k) => (k === axis ? n + 1 : n)).join(' '));
      if (!next) return;
      const facing = SIDES.findIndex((one) => one.axis === axis && !one.below);
      for (const [here, ours] of solid.shells.walls[side]!) {
        for (const [there, theirs] of next.shells.walls[facing]!) {
          const [a, b] = [rootIn(group, base.get(solid)! + here), rootIn(group, base.get(next)! + there)];
          if (a !== b && ours.some((one) => theirs.some((other) => shareArea(one, other)))) group[a] = b;
        }
      }
    });
  }
  const volumes = new Map<number, number>();
  for (const { solid } of filled) {
    solid.shells.volumes.forEach((volume, shell) => {
      const root = rootIn(group, base.get(solid)! + shell);
      volumes.set(root, (volumes.get(root) ?? 0) + volume);
    });
  }
  const least = DUST * Math.max(0, ...volumes.values());
  let pieces = 0;
  for (const volume of volumes.values()) if (volume > least) pieces++;
  return pieces;
}
