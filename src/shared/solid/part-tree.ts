import type { BodyId } from '../base/ids.ts';
import type { Pieces } from '../base/pieces.ts';
import type { Kernel, KernelMesh, KernelSolid } from './manifold/kernel.ts';
import { measure } from './measure.ts';
import { facetIn } from './mesh/source.ts';
import { type Surface, surfaceOf } from './mesh/surface.ts';
import { type Acting, runsOf } from './order.ts';
import { facesOf } from './part-faces.ts';
import type { MassProperties, PartMesh, PartState, PlacedBody } from './placed.ts';
import { isWithin, type Leaf, makeLeaf } from './solid-leaf.ts';
import type { PartFaces, RefusedBody } from './solids.ts';
import { createStepTree, type Step } from './tree.ts';

/** Volumes nearer than this share of the larger are taken to be the same. */
const SAME_VOLUME = 1e-9;

/** A part in one state. */
interface Made {
  readonly solid: KernelSolid;
  readonly mesh: KernelMesh;
  readonly properties: MassProperties;
}

interface Placed extends Acting {
  readonly body: PlacedBody;
  readonly leaf: Leaf;
  readonly step: Step;
}

/** A part's bodies in the kernel, with all that saves work when one of them changes. */
export interface PartTree {
  /** Brings the tree to these bodies. What it says meanwhile is not to be relied on. */
  update(bodies: readonly PlacedBody[]): Pieces<void>;
  /** Undefined when nothing is left of the part, or no body has a shape. */
  propertiesOf(state: PartState): MassProperties | undefined;
  meshOf(state: PartState): PartMesh | undefined;
  readonly idle: readonly BodyId[];
  /** Undefined when nothing is left of the part in one of its states. */
  readonly faces: PartFaces | undefined;
  readonly refused: readonly RefusedBody[];
  /** Gives all memory of the kernel back. */
  drop(): void;
}

export function createPartTree(kernel: Kernel): PartTree {
  const tree = createStepTree(kernel);
  let leaves = new Map<BodyId, { readonly leaf: Leaf; readonly add: Step; readonly take: Step }>();
  /** All leaves whose solids are still in the kernel: those of before stay until no group borrows from them. */
  const owned = new Set<Leaf>();
  let sources = new Map<number, { readonly leaf: Leaf; readonly body: number }>();
  let bodies: readonly PlacedBody[] = [];
  let isDone = true;
  let finished: Made | undefined;
  let asCast: Made | undefined;
  let idle: readonly BodyId[] = [];
  let refused: readonly RefusedBody[] = [];
  let faces: PartFaces | undefined;

  function place(): readonly Placed[] {
    const placed: Placed[] = [];
    const next: typeof leaves = new Map();
    const faults: RefusedBody[] = [];
    sources = new Map();
    bodies.forEach((body, index) => {
      const { shape, moves, record } = body;
      if (!shape) return;
      let entry = leaves.get(record.id);
      // A new name, or a move in the list, leaves the solid as it is.
      if (!entry || !sameValues(entry.leaf.shape, shape) || !sameValues(entry.leaf.moves, moves)) {
        const made = makeLeaf(kernel, shape, moves, 'fine');
        if (!made.ok) {
          faults.push({ body: record.id, why: made.error });
          return;
        }
        const leaf = made.value;
        owned.add(leaf);
        entry = { leaf, add: tree.leaf(leaf.solid, true), take: tree.leaf(leaf.solid, false) };
      }
      next.set(record.id, entry);
      for (const source of entry.leaf.sources) sources.set(source, { leaf: entry.leaf, body: index });
      const { min, max } = entry.leaf;
      placed.push({
        body,
        leaf: entry.leaf,
        step: record.adds ? entry.add : entry.take,
        adds: record.adds,
        min,
        max,
      });
    });
    leaves = next;
    refused = faults;
    return placed;
  }

  // Within a run the list's order stays: with what all others stand on put last, thin walls that are not there were found at the
  // feet of fillets of mirrored legs, though their corners lie on one grid.
  const solidFrom = (placed: readonly Placed[]): KernelSolid | undefined =>
    tree.solidOf(runsOf(placed).map((run) => run.map(({ step }) => step)));

  function make(placed: readonly Placed[], before: Made | undefined): Made | undefined {
    const solid = solidFrom(placed);
    if (!solid) return undefined;
    if (before?.solid === solid) return before;
    const mesh = inListOrder(kernel.meshOf(solid), placed);
    return { solid, mesh, properties: measure(kernel, solid, mesh, (source) => sources.get(source)!.leaf) };
  }

  /** Measured at every update: the places of bodies in the list may be others though the solid is the same. */
  function measureFaces(): PartFaces | undefined {
    if (!finished || !asCast) return undefined;
    const surface = ({ mesh }: Made): Surface => surfaceOf(mesh, (source) => sources.get(source)!);
    const whole = surface(finished);
    return facesOf(
      { finished: whole, 'as cast': asCast === finished ? whole : surface(asCast) },
      { finished: finished.properties, 'as cast': asCast.properties },
      bodies,
    );
  }

  /** Bodies of the list that do not change what the list makes. */
  function* idleIn(placed: readonly Placed[], made: Made | undefined): Pieces<ReadonlySet<Placed>> {
    const seen = new Set(made?.mesh.runs.map(({ source }) => sources.get(source)!.leaf));
    const found = new Set<Placed>();
    for (const [i, one] of placed.entries()) {
      // What a later body covers altogether might as well not be there.
      const covered = placed.slice(i + 1).some(({ leaf }) => isWithin(one.leaf, leaf) && isInside(one.leaf, leaf));
      const isUnseen = !covered && !seen.has(one.leaf);
      if (covered || (isUnseen && isNeedless(placed, one, made))) found.add(one);
      if (isUnseen) yield;
    }
    return found;
  }

  const inside = new WeakMap<Leaf, WeakMap<Leaf, boolean>>();
  function isInside(inner: Leaf, outer: Leaf): boolean {
    let known = inside.get(inner);
    if (!known) {
      known = new WeakMap();
      inside.set(inner, known);
    }
    let answer = known.get(outer);
    if (answer === undefined) {
      const rest = kernel.subtract(inner.solid, outer.solid);
      answer = !rest || kernel.volumeOf(rest) <= SAME_VOLUME * kernel.volumeOf(inner.solid);
      if (rest) kernel.release(rest);
      known.set(outer, answer);
    }
    return answer;
  }

  /** A body that has no face left on the part may still have filled a hollow: asked of the part without it. */
  function isNeedless(placed: readonly Placed[], one: Placed, made: Made | undefined): boolean {
    const without = solidFrom(placed.filter((other) => other !== one));
    const volume = without ? kernel.volumeOf(without) : 0;
    const now = made ? kernel.volumeOf(made.solid) : 0;
    return Math.abs(volume - now) <= SAME_VOLUME * Math.max(volume, now);
  }

  function* update(list: readonly PlacedBody[]): Pieces<void> {
    if (isDone && list === bodies) return;
    isDone = false;
    bodies = list;
    const placed = place();
    yield;
    const poured = placed.filter(({ body }) => body.record.finish !== 'machined');
    finished = make(placed, finished);
    yield;
    asCast = poured.length === placed.length ? finished : (make(poured, asCast) ?? finished);
    yield;
    const idleFinished = yield* idleIn(placed, finished);
    const idlePoured = poured.length === placed.length ? idleFinished : yield* idleIn(poured, asCast);
    idle = placed
      .filter((one) => idleFinished.has(one) && (one.body.record.finish === 'machined' || idlePoured.has(one)))
      .map(({ body }) => body.record.id);
    yield;
    faces = measureFaces();
    tree.sweep();
    const kept = new Set([...leaves.values()].map(({ leaf }) => leaf));
    for (const leaf of owned) if (!kept.has(leaf)) release(leaf);
    isDone = true;
  }

  const release = (leaf: Leaf) => {
    kernel.release(leaf.solid);
    owned.delete(leaf);
  };
  const madeOf = (state: PartState) => (state === 'finished' ? finished : asCast);

  return {
    update,
    propertiesOf: (state) => madeOf(state)?.properties,
    meshOf: (state) => {
      const made = madeOf(state);
      return made && partMesh(made.mesh, bodies, (source) => sources.get(source)!);
    },
    get idle() {
      return idle;
    },
    get faces() {
      return faces;
    },
    get refused() {
      return refused;
    },
    drop: () => {
      tree.drop();
      for (const leaf of owned) release(leaf);
      leaves = new Map();
    },
  };
}

/** The runs in the order of the bodies; the kernel's own order tells in which order it met them. */
function inListOrder(mesh: KernelMesh, placed: readonly Placed[]): KernelMesh {
  const place = new Map(placed.flatMap(({ leaf }) => leaf.sources).map((source, i) => [source, i]));
  const runs = [...mesh.runs].sort((a, b) => place.get(a.source)! - place.get(b.source)! || a.from - b.from);
  return { ...mesh, runs };
}

/** Whether two values of plain objects, lists and numbers hold the same. */
function sameValues(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b) return false;
  const keys = Object.keys(a) as never[];
  return keys.length === Object.keys(b).length && keys.every((key) => sameValues(a[key], b[key]));
}

function partMesh(
  { vertices, triangles, facetOf, runs }: KernelMesh,
  bodies: readonly PlacedBody[],
  sourceOf: (source: number) => { readonly leaf: Leaf; readonly body: number },
): PartMesh {
  const bodyOf = new Uint16Array(facetOf.length);
  const faceOf = new Uint32Array(facetOf.length);
  for (const run of runs) {
    const { leaf, body } = sourceOf(run.source);
    for (let t = run.from; t < run.to; t++) {
      bodyOf[t] = body;
      faceOf[t] = facetIn(leaf, facetOf[t]!).face;
    }
  }
  return { vertices, triangles, bodyOf, faceOf, bodies: bodies.map(({ record }) => record.id) };
}
