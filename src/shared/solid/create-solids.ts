import type { PartId } from '../base/ids.ts';
import { allOf, type Pieces } from '../base/pieces.ts';
import { sameContent } from '../drawing/keep.ts';
import { createLivePart, type LivePart } from './live/live-part.ts';
import { type Kernel, KernelFault } from './manifold/kernel.ts';
import { createPartTree, type PartTree } from './part-tree.ts';
import type { MassProperties, PartMesh, PartState, PlacedBody } from './placed.ts';
import type { MeasuredPart, PartFigures, PartSolid, RefusedBody, Solids } from './solids.ts';
import { createStandIns } from './stand-in.ts';

/** Where bodies come from. A list keeps its identity while none of its bodies changes. */
export interface BodySource {
  /** Parts in list order. */
  parts(): readonly PartId[];
  /** Bodies of a part in list order, as placed. */
  bodiesOf(part: PartId): readonly PlacedBody[];
}

/** Parts whose trees stay in the kernel's memory; the others keep their figures and are built anew when one changes. */
const TREES = 24;

interface State {
  readonly bodies: readonly PlacedBody[];
  readonly solid: PartSolid | undefined;
  readonly refused: readonly RefusedBody[];
}

interface Live {
  readonly tree: LivePart;
  readonly bodies: readonly PlacedBody[];
  readonly figures: PartFigures | undefined;
}

const none: readonly RefusedBody[] = [];

/**
 * The solids of a build.
 *
 * @param kernelOf the kernel once it is loaded; asked at each use, so that it may come later than the build.
 */
export function createSolids({ parts, bodiesOf }: BodySource, kernelOf: () => Kernel | undefined): Solids {
  const states = new Map<PartId, State>();
  /** Oldest use first. */
  const trees = new Map<PartId, PartTree>();

  /** Oldest use first. */
  const lives = new Map<PartId, Live>();
  const standIn = createStandIns();

  /** What was computed of the part as it is now. */
  function present(part: PartId): State | undefined {
    const state = states.get(part);
    return state && sameList(state.bodies, bodiesOf(part)) ? state : undefined;
  }

  const drop = (part: PartId) => {
    trees.get(part)?.drop();
    trees.delete(part);
  };

  /** The part's tree, brought to its present bodies; undefined when the kernel gave up on them. */
  function* treeOf(part: PartId, kernel: Kernel): Pieces<PartTree | undefined> {
    const tree = trees.get(part) ?? createPartTree(kernel);
    trees.delete(part);
    trees.set(part, tree);
    for (const oldest of trees.keys()) {
      if (trees.size <= TREES) break;
      drop(oldest);
    }
    try {
      yield* tree.update(bodiesOf(part));
      return tree;
    } catch (error) {
      drop(part);
      if (error instanceof KernelFault) return undefined;
      throw error;
    }
  }

  function forgetRemoved(): void {
    const there = new Set(parts());
    for (const part of states.keys()) {
      if (there.has(part)) continue;
      states.delete(part);
      drop(part);
      dropLive(part);
    }
  }

  function* computing(part: PartId): Pieces<boolean> {
    const kernel = kernelOf();
    if (!kernel || present(part)) return false;
    const before = states.get(part);
    const bodies = bodiesOf(part);
    if (!bodies.some(({ shape }) => shape)) {
      drop(part);
      states.set(part, { bodies, solid: undefined, refused: none });
      return before?.solid !== undefined;
    }
    const tree = yield* treeOf(part, kernel);
    const solid = tree && solidIn(part, tree, before?.solid);
    states.set(part, { bodies, solid, refused: tree?.refused ?? none });
    return solid !== before?.solid;
  }

  function take(part: PartId, bodies: readonly PlacedBody[], { solid, refused }: MeasuredPart): boolean {
    if (!sameList(bodies, bodiesOf(part)) || present(part)) return false;
    const before = states.get(part)?.solid;
    const now = solid && keptSolid(solid, before);
    states.set(part, { bodies, solid: now, refused });
    return now !== before;
  }

  const dropLive = (part: PartId) => {
    lives.get(part)?.tree.drop();
    lives.delete(part);
  };

  function presentLive(part: PartId): Live | undefined {
    const live = lives.get(part);
    return live && sameList(live.bodies, bodiesOf(part)) ? live : undefined;
  }

  const wantsLive = (part: PartId) =>
    kernelOf() !== undefined && bodiesOf(part).some(({ shape }) => shape) && !presentLive(part);

  function computeLive(part: PartId): boolean {
    const kernel = kernelOf();
    if (!kernel || !wantsLive(part)) return false;
    const tree = lives.get(part)?.tree ?? createLivePart(kernel);
    const bodies = bodiesOf(part);
    lives.delete(part);
    try {
      tree.update(bodies);
      lives.set(part, { tree, bodies, figures: tree.figures });
    } catch (error) {
      tree.drop();
      if (!(error instanceof KernelFault)) throw error;
      // Measuring will say what it can; until the bodies change there is no use in trying again.
      lives.set(part, { tree: createLivePart(kernel), bodies, figures: undefined });
    }
    for (const oldest of lives.keys()) {
      if (lives.size <= TREES) break;
      dropLive(oldest);
    }
    return true;
  }

  function meshOf(part: PartId, state: PartState): PartMesh | undefined {
    const kernel = kernelOf();
    if (!kernel || !present(part)?.solid) return undefined;
    return allOf(treeOf(part, kernel))?.meshOf(state);
  }

  return {
    bodiesOf,
    solidOf: (part) => present(part)?.solid,
    refusedOf: (part) => present(part)?.refused ?? none,
    pending: () => {
      if (!kernelOf()) return [];
      forgetRemoved();
      return parts().filter((part) => bodiesOf(part).some(({ shape }) => shape) && !present(part));
    },
    computing,
    compute: (part) => allOf(computing(part)),
    measuredOf: (part) => {
      const { solid, refused } = present(part) ?? { solid: undefined, refused: none };
      return { solid, refused };
    },
    take,
    drop: () => {
      for (const part of [...trees.keys()]) drop(part);
      for (const part of [...lives.keys()]) dropLive(part);
    },
    meshOf,
    wantsLive,
    computeLive,
    figuresOf: (part) => present(part)?.solid ?? presentLive(part)?.figures,
    liveMeshOf: (part, state) => presentLive(part)?.tree.meshOf(state),
    latestOf: (part) => {
      const now = present(part);
      return now ? now.solid : standIn(states.get(part)?.solid, presentLive(part)?.figures, bodiesOf(part));
    },
  };
}

/** The part's figures; the very object of before when all of them are what they were. */
function solidIn(part: PartId, tree: PartTree, before: PartSolid | undefined): PartSolid | undefined {
  const finished = tree.propertiesOf('finished');
  const asCast = tree.propertiesOf('as cast');
  if (!finished || !asCast || !tree.faces) return undefined;
  return keptSolid({ part, level: 'measured', finished, asCast, idle: tree.idle, faces: tree.faces }, before);
}

/** A solid with all entries of before that hold the same; the very one of before where all do. */
function keptSolid(now: PartSolid, before: PartSolid | undefined): PartSolid {
  const finished = kept(now.finished, before?.finished)!;
  const asCast = now.asCast === now.finished ? finished : kept(now.asCast, before?.asCast)!;
  const idle = before && sameList(before.idle, now.idle) ? before.idle : now.idle;
  const faces = before && sameContent(before.faces, now.faces) ? before.faces : now.faces;
  const solid: PartSolid = { ...now, finished, asCast, idle, faces };
  const names = Object.keys(solid) as (keyof PartSolid)[];
  return before && names.every((name) => before[name] === solid[name]) ? before : solid;
}

const kept = (now: MassProperties | undefined, before: MassProperties | undefined): MassProperties | undefined =>
  now && before && sameProperties(now, before) ? before : now;

const sameProperties = (a: MassProperties, b: MassProperties): boolean =>
  (Object.keys(a) as (keyof MassProperties)[]).every((key) => {
    const [x, y] = [a[key], b[key]];
    return typeof x === 'number' ? x === y : sameList(x as readonly number[], y as readonly number[]);
  });

const sameList = <T>(a: readonly T[], b: readonly T[]): boolean =>
  a === b || (a.length === b.length && a.every((one, i) => one === b[i]));
