import { type Direction, directions } from '../../build/casting.ts';
import { axes } from '../../build/station.ts';
import type { CutSurface } from './cut-into-cells.ts';

/** What a casting covers, seen along an axis, and what lies over it. */
export interface Shadow {
  readonly areaMm2: number;
  /** Between its uppermost surface and the top of its box, over the shadow. */
  readonly spaceAboveMm3: number;
}

/** The shadow that a casting throws with each direction up. Of faces that lean, true to about a cell. */
export function shadowsOf(cut: CutSurface): Readonly<Record<Direction, Shadow>> {
  return Object.fromEntries(directions.map((up) => [up, shadowOf(cut, up)])) as Record<Direction, Shadow>;
}

function shadowOf({ grid, volumes }: CutSurface, up: Direction): Shadow {
  const { counts, cellMm } = grid;
  const axis = axes.indexOf(up[1] as 'X' | 'Y' | 'Z');
  const strides = [1, counts[0], counts[0] * counts[1]] as const;
  const [u, v] = [0, 1, 2].filter((k) => k !== axis) as [number, number];
  const length = counts[axis]!;
  const fills = new Float64Array(length);
  let area = 0;
  let metalBelow = 0;
  let top = 0;
  for (let j = 0; j < counts[v]!; j++) {
    for (let i = 0; i < counts[u]!; i++) {
      const foot = i * strides[u]! + j * strides[v]!;
      for (let k = 0; k < length; k++) {
        const step = up[0] === '+' ? k : length - 1 - k;
        fills[k] = volumes[foot + step * strides[axis]!]! / cellMm ** 3;
      }
      const { cover, height } = topOf(fills);
      area += cover;
      metalBelow += cover * height;
      for (let k = length - 1; k >= 0; k--) {
        if (fills[k]! <= 1e-6) continue;
        top = Math.max(top, k + Math.min(1, fills[k]! / cover));
        break;
      }
    }
  }
  return { areaMm2: area * cellMm ** 2, spaceAboveMm3: (area * top - metalBelow) * cellMm ** 3 };
}

/**
 * How much of a column's section is metal somewhere along it, and how high its uppermost metal stands on the mean, in cells: down
 * from the top to the first cell that is as full as any, whatever lies over that counting by how full it is.
 */
function topOf(fills: Float64Array): { readonly cover: number; readonly height: number } {
  let cover = 0;
  for (const fill of fills) cover = Math.max(cover, fill);
  if (cover <= 1e-6) return { cover: 0, height: 0 };
  let over = 0;
  for (let k = fills.length - 1; k >= 0; k--) {
    if (fills[k]! >= 0.98 * cover) return { cover: Math.min(1, cover), height: k + (fills[k]! + over) / cover };
    over += fills[k]!;
  }
  return { cover: Math.min(1, cover), height: 0 };
}
