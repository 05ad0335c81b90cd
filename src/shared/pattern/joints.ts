import { type FlatPoint, type FlatRegion, holdsFlatPoint, regionArea } from '../solid/flat-region.ts';
import type { Kernel } from '../solid/manifold/kernel.ts';
import type { Section } from './cut-sections.ts';

/** Where two sections are glued together, with the marks that both carry. */
export interface GlueJoint {
  /** Names of the sections. */
  readonly under: string;
  readonly over: string;
  readonly areaMm2: number;
  /** Two dowels, or as many as there is room for; in the plane across the axis. */
  readonly marks: readonly FlatPoint[];
}

/** Foam left round a mark, mm: as much as there is room for. */
const ROOM_MM = [8, 5, 3] as const;
/** Marks of the joint below lie on the very border of their room. */
const HAIR_MM = 0.2;
/** Two marks nearer than this do not hold an angle, mm. */
const APART_MM = 15;
/** Faces that touch by less are not glued, mm². */
const LEAST_MM2 = 4;

/** The joints between sections of neighbouring layers, from below. Marks of a joint are put under those of the next where they fit. */
export function glueJoints(kernel: Kernel, sections: readonly Section[]): readonly GlueJoint[] {
  const joints: GlueJoint[] = [];
  const marksUpTo = new Map<string, readonly FlatPoint[]>();
  for (const over of sections) {
    for (const under of sections) {
      if (under.layer !== over.layer - 1) continue;
      const contact = kernel.common(under.upper, over.lower);
      const areaMm2 = regionArea(contact);
      if (areaMm2 < LEAST_MM2) continue;
      const marks = marksIn(kernel, contact, marksUpTo.get(under.name) ?? []);
      marksUpTo.set(over.name, marks);
      joints.push({ under: under.name, over: over.name, areaMm2, marks });
    }
  }
  return joints;
}

function marksIn(kernel: Kernel, contact: FlatRegion, below: readonly FlatPoint[]): readonly FlatPoint[] {
  for (const room of ROOM_MM) {
    const inner = kernel.grow(contact, -room, 'round');
    const kept = below.filter((mark) => holdsFlatPoint(kernel.grow(contact, HAIR_MM - room, 'round'), mark));
    if (kept.length === 2) return kept;
    const pair = farthestPair(inner.flat());
    if (pair) return pair;
  }
  const inner = kernel.grow(contact, -ROOM_MM[2], 'round');
  const [corner] = inner.flat();
  return corner ? [corner] : [];
}

/** The two points that lie farthest apart; undefined where they lie too near. */
function farthestPair(points: readonly FlatPoint[]): readonly [FlatPoint, FlatPoint] | undefined {
  // Enough of many points: a round outline has hundreds.
  const step = Math.max(1, Math.floor(points.length / 200));
  const some = points.filter((_, i) => i % step === 0);
  let best: readonly [FlatPoint, FlatPoint] | undefined;
  let most = APART_MM;
  some.forEach((a, i) => {
    for (const b of some.slice(i + 1)) {
      const apart = Math.hypot(a[0] - b[0], a[1] - b[1]);
      if (apart > most) {
        most = apart;
        best = [a, b];
      }
    }
  });
  return best;
}

/** One step of gluing a pattern up. */
export interface GlueStep {
  /** What is put on, and what it is put to. */
  readonly add: string;
  readonly to: readonly string[];
  /** Turned over, as it hangs under what stands already. */
  readonly fromBelow: boolean;
}

/**
 * The order in which sections are glued: from the largest of the lowest layer upwards; what hangs down from a section, like a
 * foot that begins higher, is put to it as soon as that stands.
 *
 * @returns the section that all begins with, the steps, and the sections that nothing ties to the rest.
 */
export function glueOrder(
  sections: readonly Section[],
  joints: readonly GlueJoint[],
): { readonly first: string | undefined; readonly steps: readonly GlueStep[]; readonly loose: readonly string[] } {
  const lowest = Math.min(...sections.map(({ layer }) => layer));
  const start = sections
    .filter(({ layer }) => layer === lowest)
    .reduce<Section | undefined>((best, one) => (best && best.volumeMm3 >= one.volumeMm3 ? best : one), undefined);
  if (!start) return { first: undefined, steps: [], loose: [] };
  const stands = new Set([start.name]);
  const steps: GlueStep[] = [];
  for (;;) {
    // The lowest joint between what stands and what does not.
    const joint = joints.find(({ under, over }) => stands.has(under) !== stands.has(over));
    if (!joint) break;
    const add = stands.has(joint.under) ? joint.over : joint.under;
    const to = joints.flatMap(({ under, over }) =>
      under === add && stands.has(over) ? [over] : over === add && stands.has(under) ? [under] : [],
    );
    steps.push({ add, to, fromBelow: add === joint.under });
    stands.add(add);
  }
  return { first: start.name, steps, loose: sections.flatMap(({ name }) => (stands.has(name) ? [] : [name])) };
}
