import type { Kernel, KernelMesh, KernelSolid } from '../manifold/kernel.ts';
import { type SolidSums, sumsOf } from '../measure.ts';
import { extrusionMesh } from '../mesh/extrusion-mesh.ts';
import type { Source } from '../mesh/source.ts';
import { runsOf } from '../order.ts';
import type { PartState } from '../placed.ts';
import { type Box, type Leaf, overlap } from '../solid-leaf.ts';
import { type CellShells, shellsOf } from './cell-shells.ts';
import type { Cell } from './cells.ts';

/** A body as the cells see it. */
export interface CellBody extends Box {
  readonly leaf: Leaf;
  readonly adds: boolean;
  readonly machined: boolean;
}

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

/** Works out what bodies, in list order, make in a cell. Where both states are the same, it is one object. */
export function cellSolid(
  kernel: Kernel,
  cell: Cell,
  bodies: readonly CellBody[],
  sourceOf: (source: number) => Source,
): CellStates {
  const order = new Map(bodies.flatMap(({ leaf }) => leaf.sources).map((source, i) => [source, i]));
  const tools: Tools = { kernel, cell, sourceOf, placeOf: (source) => order.get(source) ?? order.size };
  const poured = bodies.filter(({ machined }) => !machined);
  const cast = fold(kernel, undefined, poured);
  const asCast = cast && cut(tools, cast.solid);
  let finished = asCast;
  if (poured.length < bodies.length) {
    const after = machinedLast(bodies);
    const whole = after ? fold(kernel, cast?.solid, after) : fold(kernel, undefined, bodies);
    finished = whole && cut(tools, whole.solid);
    if (whole?.own) kernel.release(whole.solid);
  }
  if (cast?.own) kernel.release(cast.solid);
  return { finished, 'as cast': asCast };
}

/** The machined bodies, where they act as if they stood at the end of the list. */
function machinedLast(bodies: readonly CellBody[]): readonly CellBody[] | undefined {
  const machined: CellBody[] = [];
  for (const body of bodies) {
    if (body.machined) machined.push(body);
    else if (machined.some((one) => one.adds !== body.adds && overlap(one, body))) return undefined;
  }
  return machined;
}

interface Folded {
  readonly solid: KernelSolid;
  /** Whether it was made here and is to be released; else it is one that came in. */
  readonly own: boolean;
}

/** Lets bodies act on what stands. */
function fold(kernel: Kernel, start: KernelSolid | undefined, bodies: readonly CellBody[]): Folded | undefined {
  let now: Folded | undefined = start && { solid: start, own: false };
  for (const run of runsOf(bodies)) {
    const solids = run.map(({ leaf }) => leaf.solid);
    const [first] = solids;
    if (!first) continue;
    if (run[0]!.adds && !now && solids.length === 1) {
      now = { solid: first, own: false };
      continue;
    }
    if (!run[0]!.adds && !now) continue;
    const before: Folded | undefined = now;
    const made: KernelSolid | undefined = run[0]!.adds
      ? kernel.unite(before ? [before.solid, ...solids] : solids)
      : takenFrom(kernel, before!.solid, solids);
    if (before?.own) kernel.release(before.solid);
    now = made && { solid: made, own: true };
  }
  return now;
}

function takenFrom(kernel: Kernel, from: KernelSolid, solids: readonly KernelSolid[]): KernelSolid | undefined {
  const [first] = solids;
  if (solids.length === 1 && first) return kernel.subtract(from, first);
  const tools = kernel.unite(solids);
  if (!tools) return kernel.unite([from]);
  const rest = kernel.subtract(from, tools);
  kernel.release(tools);
  return rest;
}

interface Tools {
  readonly kernel: Kernel;
  readonly cell: Cell;
  readonly sourceOf: (source: number) => Source;
  /** Place of a source in the order of the bodies; walls come last. */
  readonly placeOf: (source: number) => number;
}

/** What lies of a solid in the cell, measured. */
function cut(tools: Tools, solid: KernelSolid): CellSolid | undefined {
  const { kernel, cell } = tools;
  const { min, max } = kernel.boxOf(solid);
  const within = min.every((from, k) => from > cell.min[k]!) && max.every((to, k) => to < cell.max[k]!);
  if (within) return measured(tools, solid, undefined);
  const taken = kernel.take(boxMesh(cell));
  if (!taken.ok) return undefined;
  const { solid: box, source } = taken.value;
  const rest = kernel.intersect(solid, box);
  kernel.release(box);
  if (!rest) return undefined;
  const made = measured(tools, rest, source);
  kernel.release(rest);
  return made;
}

function measured({ kernel, sourceOf, placeOf }: Tools, solid: KernelSolid, walls: number | undefined): CellSolid {
  const mesh = kernel.meshOf(solid);
  // The kernel's own order tells in which order it met the bodies; sums and meshes must not hang on that.
  const runs = [...mesh.runs].sort((a, b) => placeOf(a.source) - placeOf(b.source) || a.from - b.from);
  const sorted = { ...mesh, runs };
  const sums = sumsOf(kernel, solid, sorted, sourceOf, walls);
  return { mesh: sorted, walls, sums, box: kernel.boxOf(solid), shells: shellsOf(sorted, walls) };
}

/** Its faces are numbered: against y, along x, along y, against x, against z, along z. */
const boxMesh = ({ min: [x0, y0, z0], max: [x1, y1, z1] }: Box) => {
  const corner = (u: number, v: number) => ({ u, v, bulge: 0 });
  const outline = [corner(x0, y0), corner(x1, y0), corner(x1, y1), corner(x0, y1)];
  return extrusionMesh({ is: 'extrusion', axis: 'Z', a0: z0, a1: z1, outline }, 'coarse').mesh;
};
