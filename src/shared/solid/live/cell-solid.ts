import type { Kernel, KernelMesh, KernelSolid } from '../manifold/kernel.ts';
import { type SolidSums, sumsOf, wholeOf } from '../measure.ts';
import { extrusionMesh } from '../mesh/extrusion-mesh.ts';
import type { Source } from '../mesh/source.ts';
import { runsOf } from '../order.ts';
import type { PartState } from '../placed.ts';
import { type Box, overlap } from '../solid-leaf.ts';
import type { CellBody } from './cell-body.ts';
import { type CellShells, shellsOf } from './cell-shells.ts';
import type { Cell } from './cells.ts';
import { type Following, following } from './follow.ts';
import type { LiveLeaf } from './live-leaf.ts';
import { createMemo } from './memo.ts';

/** What lies of a part in one cell. The kernel holds nothing of it. */
export interface CellSolid {
  readonly mesh: KernelMesh;
  /** The number of the cell's own box among the sources of `mesh`; undefined where nothing was cut off. */
  readonly walls: number | undefined;
  readonly sums: SolidSums;
  readonly box: Box;
  readonly shells: CellShells;
}

export type CellStates = Readonly<Record<PartState, CellSolid | undefined>>;

/** One cell of a part, with the steps on the way to its solid, so that an edit re-does only those after it. */
export interface CellWork {
  /** What bodies, in list order, make in the cell. Where both states are the same, it is one object. */
  update(bodies: readonly CellBody[]): CellStates;
  /**
   * The same without the kernel, where all that an edit does is to move faces on along others: the meshes of before are carried
   * along. Undefined where it may do more.
   */
  follow(before: readonly CellBody[], now: readonly CellBody[], states: CellStates): CellStates | undefined;
  /** Gives all memory of the kernel back. */
  drop(): void;
}

/** A solid, and what it was made of in words that no other has. */
interface Standing {
  readonly key: string;
  readonly solid: KernelSolid;
}

/** The number of its first mesh, which no other leaf has. */
const idOf = ({ sources }: LiveLeaf): number => sources[0]!;

/** Meshes are carried along so often before they are made anew: each time rounds their vertices to 24 bits. */
const MOST_FOLLOWED = 200;

export function createCellWork(kernel: Kernel, cell: Cell, sourceOf: (source: number) => Source): CellWork {
  const memo = createMemo(kernel);
  let followed = 0;
  let box: { readonly solid: KernelSolid; readonly source: number } | undefined;

  const cut = (key: string, solid: KernelSolid) =>
    memo(key, () => {
      if (!box) {
        const taken = kernel.take(boxMesh(cell));
        if (!taken.ok) return undefined;
        box = taken.value;
      }
      return kernel.intersect(solid, box.solid);
    });

  /** Lets bodies act on what stands. `solidFor` gives the solid of one that adds. */
  function fold(
    start: Standing | undefined,
    bodies: readonly CellBody[],
    solidFor: (body: CellBody) => Standing | undefined,
  ): Standing | undefined {
    let now = start;
    for (const run of runsOf(bodies)) {
      if (run[0]!.adds) {
        const more = run.flatMap((body) => solidFor(body) ?? []);
        const all: readonly Standing[] = now ? [now, ...more] : more;
        now = all.length === 1 ? all[0] : united(all);
      } else if (now) now = taken(now, run);
    }
    return now;
  }

  function united(all: readonly Standing[]): Standing | undefined {
    if (all.length === 0) return undefined;
    const key = `(${all.map((one) => one.key).join('+')})`;
    return standing(
      key,
      memo(key, () => kernel.unite(all.map(({ solid }) => solid))),
    );
  }

  function taken(from: Standing, run: readonly CellBody[]): Standing | undefined {
    const tools = run.flatMap(({ leaf }) => standing(String(idOf(leaf)), leaf.solid()) ?? []);
    const tool = tools.length === 1 ? tools[0] : united(tools);
    if (!tool) return from;
    const key = `(${from.key}-${tool.key})`;
    return standing(
      key,
      memo(key, () => kernel.subtract(from.solid, tool.solid)),
    );
  }

  function update(bodies: readonly CellBody[]): CellStates {
    followed = 0;
    const crossing = bodies.filter((body) => body.adds && !isInside(body, cell));
    // One alone is cut off first, once for all edits of the others; several, whose cuts would lie in one plane, at the end.
    const alone = crossing.length === 1 ? crossing[0] : undefined;
    const solidFor = (body: CellBody): Standing | undefined => {
      const { leaf } = body;
      const solid = leaf.solid();
      if (body !== alone || !solid) return standing(String(idOf(leaf)), solid);
      const key = `${idOf(leaf)}cut`;
      return standing(key, cut(key, solid));
    };
    const whole = (made: Standing | undefined) =>
      made && crossing.length > 1 ? standing(`${made.key}cut`, cut(`${made.key}cut`, made.solid)) : made;
    const order = new Map(bodies.flatMap(({ leaf }) => leaf.sources).map((source, i) => [source, i]));
    const poured = bodies.filter(({ machined }) => !machined);
    const cast = fold(undefined, poured, solidFor);
    const asCast = measured(whole(cast), order);
    let finished = asCast;
    if (poured.length < bodies.length) {
      const after = machinedLast(bodies);
      finished = measured(whole(after ? fold(cast, after, solidFor) : fold(undefined, bodies, solidFor)), order);
    }
    memo.sweep();
    return { finished, 'as cast': asCast };
  }

  function measured(made: Standing | undefined, order: ReadonlyMap<number, number>): CellSolid | undefined {
    if (!made) return undefined;
    const { solid } = made;
    const mesh = kernel.meshOf(solid);
    // The kernel's own order tells in which order it met the bodies; sums and meshes must not hang on that. Walls come last.
    const placeOf = (source: number) => order.get(source) ?? order.size;
    const runs = [...mesh.runs].sort((a, b) => placeOf(a.source) - placeOf(b.source) || a.from - b.from);
    const sorted = { ...mesh, runs };
    const walls = box?.source;
    const whole = wholeOf(kernel, solid);
    const sums = sumsOf(sorted, whole, sourceOf, walls);
    return { mesh: sorted, walls, sums, box: { min: whole.min, max: whole.max }, shells: shellsOf(sorted, walls) };
  }

  function follow(before: readonly CellBody[], now: readonly CellBody[], states: CellStates): CellStates | undefined {
    const way = followed < MOST_FOLLOWED ? following(before, now, cell) : undefined;
    const asCast = way && carried(states['as cast'], way);
    if (!asCast) return undefined;
    const finished = states.finished === states['as cast'] ? asCast : carried(states.finished, way);
    if (!finished) return undefined;
    followed++;
    return { finished: finished.solid, 'as cast': asCast.solid };
  }

  function carried(
    solid: CellSolid | undefined,
    way: Following,
  ): { readonly solid: CellSolid | undefined } | undefined {
    if (!solid) return { solid };
    const { walls, sums } = solid;
    const mesh = way.carry(solid.mesh);
    if (!mesh) return undefined;
    const moved = way.carryBox(solid.box, mesh);
    const whole = { ...moved, volume: (ofMesh: number) => ofMesh * sums.scale };
    return {
      solid: { mesh, walls, sums: sumsOf(mesh, whole, sourceOf, walls), box: moved, shells: shellsOf(mesh, walls) },
    };
  }

  return {
    update,
    follow,
    drop: () => {
      memo.drop();
      if (box) kernel.release(box.solid);
      box = undefined;
    },
  };
}

const standing = (key: string, solid: KernelSolid | undefined): Standing | undefined => solid && { key, solid };

/** Whether a box lies within the cell and touches none of its walls. */
const isInside = ({ min, max }: Box, cell: Cell): boolean =>
  min.every((from, k) => from > cell.min[k]!) && max.every((to, k) => to < cell.max[k]!);

/** The machined bodies, where they act as if they stood at the end of the list. */
function machinedLast(bodies: readonly CellBody[]): readonly CellBody[] | undefined {
  const machined: CellBody[] = [];
  for (const body of bodies) {
    if (body.machined) machined.push(body);
    else if (machined.some((one) => one.adds !== body.adds && overlap(one, body))) return undefined;
  }
  return machined;
}

/** Its faces are numbered: against y, along x, along y, against x, against z, along z. */
const boxMesh = ({ min: [x0, y0, z0], max: [x1, y1, z1] }: Box) => {
  const corner = (u: number, v: number) => ({ u, v, bulge: 0 });
  const outline = [corner(x0, y0), corner(x1, y0), corner(x1, y1), corner(x0, y1)];
  return extrusionMesh({ is: 'extrusion', axis: 'Z', a0: z0, a1: z1, outline }, 'coarse').mesh;
};
