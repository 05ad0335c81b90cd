import type { BodyId } from '../../base/ids.ts';
import { sameContent } from '../../drawing/keep.ts';
import type { Kernel } from '../manifold/kernel.ts';
import { facetIn } from '../mesh/source.ts';
import type { PartMesh, PartState, PlacedBody, Vec3 } from '../placed.ts';
import { type Box, overlap } from '../solid-leaf.ts';
import type { PartFigures } from '../solids.ts';
import type { CellBody } from './cell-body.ts';
import { type CellStates, type CellWork, createCellWork } from './cell-solid.ts';
import { type Cell, cellsBetween, planesFor } from './cells.ts';
import { type Filled, joinCells } from './join-cells.ts';
import { createLiveLeaf, type LiveLeaf } from './live-leaf.ts';

/** A leaf with more triangles is not taken through many cells: that would cost more than it saves. */
const HEAVY = 4000;

/**
 * A part worked out at once: its round bodies have few facets, and it is parted into cells, of which an edit re-does only
 * those that the changed body reaches into. What lies in the cells is never united: figures add up, and the surface is shown
 * without the walls between them.
 */
export interface LivePart {
  /** Brings it to these bodies. */
  update(bodies: readonly PlacedBody[]): void;
  /** Undefined when nothing is left of the part, or no body has a shape. */
  readonly figures: PartFigures | undefined;
  /** For showing only: it is parted along the walls of the cells. */
  meshOf(state: PartState): PartMesh | undefined;
  /** Gives all memory of the kernel back. */
  drop(): void;
}

interface Kept {
  readonly work: CellWork;
  readonly bodies: readonly CellBody[];
  readonly states: CellStates;
}

const keyOf = ({ min, max }: Cell): string => [...min, ...max].join(' ');

export function createLivePart(kernel: Kernel): LivePart {
  let leaves = new Map<BodyId, CellBody>();
  let kept = new Map<string, Kept>();
  /** All that hold memory of the kernel, also where an update was broken off. */
  const works = new Set<CellWork>();
  let cells: readonly (Kept & { readonly cell: Cell })[] = [];
  let bodies: readonly PlacedBody[] = [];
  let figures: PartFigures | undefined;
  const sources = new Map<number, LiveLeaf>();

  /** The bodies with a shape, those of before where shape, moves and doing are the same. */
  function place(): readonly CellBody[] {
    const next: typeof leaves = new Map();
    for (const { shape, moves, record } of bodies) {
      if (!shape) continue;
      const machined = record.finish === 'machined';
      const before = leaves.get(record.id);
      if (before && sameContent(before.leaf.shape, shape) && sameContent(before.leaf.moves, moves)) {
        const same = before.adds === record.adds && before.machined === machined;
        next.set(record.id, same ? before : { ...before, adds: record.adds, machined });
        continue;
      }
      const leaf = createLiveLeaf(kernel, shape, moves);
      for (const source of leaf.sources) sources.set(source, leaf);
      next.set(record.id, { leaf, adds: record.adds, machined, min: leaf.min, max: leaf.max });
    }
    const used = new Set([...next.values()].map(({ leaf }) => leaf));
    for (const { leaf } of leaves.values()) if (!used.has(leaf)) release(leaf);
    leaves = next;
    return [...next.values()];
  }

  const release = (leaf: LiveLeaf) => {
    leaf.release();
    for (const source of leaf.sources) sources.delete(source);
  };
  const sourceOf = (source: number) => sources.get(source)!;

  function update(list: readonly PlacedBody[]): void {
    if (list === bodies) return;
    bodies = list;
    const placed = place();
    const next: typeof kept = new Map();
    cells = cellsFor(placed).flatMap((cell) => {
      const within = placed.filter((body) => overlap(body, cell));
      if (!within.some(({ adds }) => adds)) return [];
      const key = keyOf(cell);
      const before = kept.get(key);
      const same = before?.bodies.length === within.length && before.bodies.every((body, i) => body === within[i]);
      if (before && same) {
        next.set(key, before);
        return [{ ...before, cell }];
      }
      const work = before?.work ?? createCellWork(kernel, cell, sourceOf);
      works.add(work);
      const states = (before && work.follow(before.bodies, within, before.states)) ?? work.update(within);
      const one = { work, bodies: within, states };
      next.set(key, one);
      return [{ ...one, cell }];
    });
    for (const [key, { work }] of kept) {
      if (next.has(key)) continue;
      work.drop();
      works.delete(work);
    }
    kept = next;
    const finished = joinCells(filledIn('finished'));
    const isOne = cells.every(({ states }) => states.finished === states['as cast']);
    const asCast = isOne ? finished : joinCells(filledIn('as cast'));
    // Without anything poured the part is cut from the solid.
    figures = finished && { level: 'live', finished, asCast: asCast ?? finished };
  }

  function filledIn(state: PartState): readonly Filled[] {
    return cells.flatMap(({ cell, states }) => (states[state] ? [{ cell, solid: states[state] }] : []));
  }

  return {
    update,
    get figures() {
      return figures;
    },
    meshOf: (state) => {
      if (!figures) return undefined;
      const shown = figures.asCast === figures.finished ? 'finished' : state;
      const places = new Map(bodies.map(({ record }, i) => [leaves.get(record.id)?.leaf, i]));
      return joinedMesh(filledIn(shown), bodies, places, sourceOf);
    },
    drop: () => {
      for (const { leaf } of leaves.values()) release(leaf);
      leaves = new Map();
      for (const work of works) work.drop();
      works.clear();
      kept = new Map();
      cells = [];
      bodies = [];
      figures = undefined;
    },
  };
}

function cellsFor(placed: readonly CellBody[]): readonly Cell[] {
  const standing = placed.filter(({ adds }) => adds);
  if (standing.length === 0) return [];
  const at = (of: 'min' | 'max', pick: (...values: number[]) => number) =>
    [0, 1, 2].map((k) => pick(...standing.map((body) => body[of][k]!))) as unknown as Vec3;
  const box: Box = { min: at('min', Math.min), max: at('max', Math.max) };
  const heavy = placed.some(({ leaf }) => leaf.body.mesh.triangles.length * leaf.moves.length > 3 * HEAVY);
  return cellsBetween(planesFor(box, heavy ? [] : placed), box);
}

/** The surfaces of all cells as one mesh, without their walls. */
function joinedMesh(
  filled: readonly Filled[],
  bodies: readonly PlacedBody[],
  places: ReadonlyMap<LiveLeaf | undefined, number>,
  sourceOf: (source: number) => LiveLeaf,
): PartMesh {
  const parts = filled.map(({ solid }) => ({
    mesh: solid.mesh,
    runs: solid.mesh.runs.filter(({ source }) => source !== solid.walls),
  }));
  const count = parts.reduce((sum, { runs }) => sum + runs.reduce((n, { from, to }) => n + to - from, 0), 0);
  const vertices = new Float32Array(parts.reduce((sum, { mesh }) => sum + mesh.vertices.length, 0));
  const triangles = new Uint32Array(3 * count);
  const bodyOf = new Uint16Array(count);
  const faceOf = new Uint32Array(count);
  let [v, n] = [0, 0];
  for (const { mesh, runs } of parts) {
    vertices.set(mesh.vertices, v);
    for (const { source, from, to } of runs) {
      const leaf = sourceOf(source);
      for (let t = from; t < to; t++, n++) {
        for (let k = 0; k < 3; k++) triangles[3 * n + k] = mesh.triangles[3 * t + k]! + v / 3;
        bodyOf[n] = places.get(leaf)!;
        faceOf[n] = facetIn(leaf, mesh.facetOf[t]!).face;
      }
    }
    v += mesh.vertices.length;
  }
  return { vertices, triangles, bodyOf, faceOf, bodies: bodies.map(({ record }) => record.id) };
}
