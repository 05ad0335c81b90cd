import type { VerdictKind } from '../setup-check.ts';
import type { Cut, LatheScene, Span, SweptStep } from './scene.ts';

/** A stretch of the lathe over which the work may reach no farther than a radius. */
export interface Zone {
  readonly kind: Extract<VerdictKind, 'over-bed' | 'in-gap' | 'over-saddle' | 'over-cross-slide'>;
  readonly from: number;
  readonly to: number;
  readonly radius: number;
}

/** What the work does in a zone. */
export interface ZoneRead extends Zone {
  /** The greatest radius of the work there; 0 where it does not come. */
  readonly most: number;
  readonly margin: number;
  /** Along the bed, the middle of where it reaches farthest. */
  readonly at: number;
}

/** Parts of a length that rounding may leave over. */
const NEAR = 1e-9;

/** Where along the bed the gap is; undefined without one, or where it is not known where the nose stands. */
export const gapOf = ({ gap, nose }: LatheScene): Span | undefined =>
  gap === undefined || nose === undefined ? undefined : [nose, nose + gap.length];

/** Zones that do not move: bed and gap, over all of the work. */
function bedZones(scene: LatheScene): readonly Zone[] {
  const { bed, extent, gap } = scene;
  const over = gapOf(scene);
  const zones: Zone[] = [];
  const add = (kind: Zone['kind'], from: number, to: number, radius: number | undefined) => {
    if (radius !== undefined && to > from + NEAR) zones.push({ kind, from, to, radius });
  };
  if (over === undefined || gap === undefined) add('over-bed', extent[0], extent[1], bed.radius);
  else {
    add('over-bed', extent[0], Math.min(extent[1], over[0]), bed.radius);
    add('in-gap', Math.max(extent[0], over[0]), Math.min(extent[1], over[1]), gap.radius);
    add('over-bed', Math.max(extent[0], over[1]), extent[1], bed.radius);
  }
  return zones;
}

/**
 * Where the edge of a tool set square would stand while a cut is made at a place along the bed, with the saddle as it is put: a boring bar's own
 * edge lies ahead of the block by the bar's length. Undefined for what the tailstock feeds: then the saddle is out of the way.
 */
export function saddleAt({ saddle }: LatheScene, tool: number, cut: Cut | undefined): number | undefined {
  if (cut === undefined || cut.way === 'outside' || cut.way === 'flat') return tool + (cut?.shift ?? 0);
  if (cut.way === 'drilled' || cut.toolLength === undefined || saddle.blockWidth === undefined) return undefined;
  return tool + cut.toolLength + saddle.blockWidth / 2;
}

/** The zones while a cut is made at a place along the bed. What is not known of the saddle has none. */
function zonesAt(scene: LatheScene, tool: number, cut?: Cut): readonly Zone[] {
  const edge = saddleAt(scene, tool, cut);
  const { wingRadius, towardsHead, towardsTail, slideRadius, slideWidth } = scene.saddle;
  const zones = [...bedZones(scene)];
  if (edge === undefined) return zones;
  if (wingRadius !== undefined && towardsHead !== undefined && towardsTail !== undefined)
    zones.push({ kind: 'over-saddle', from: edge - towardsHead, to: edge + towardsTail, radius: wingRadius });
  if (slideRadius !== undefined && slideWidth !== undefined)
    zones.push({
      kind: 'over-cross-slide',
      from: edge - slideWidth / 2,
      to: edge + slideWidth / 2,
      radius: slideRadius,
    });
  return zones;
}

/** The steps of the work within a stretch, cut off at its ends. */
export function stepsWithin(swept: readonly SweptStep[], from: number, to: number): readonly SweptStep[] {
  const within: SweptStep[] = [];
  for (const step of swept) {
    const [a, b] = [Math.max(step.from, from), Math.min(step.to, to)];
    if (b > a + NEAR && step.most > 0) within.push({ ...step, from: a, to: b });
  }
  return within;
}

/** The chuck or plate turns with the work, and must pass the saddle too; undefined where too little is known of it. */
function headStep({ head, nose }: LatheScene): SweptStep | undefined {
  if (nose === undefined || head.is === 'centre' || head.diameter === undefined) return undefined;
  const length = head.is === 'chuck' ? head.length : head.face;
  if (length === undefined) return undefined;
  const radius = head.diameter / 2 + (head.is === 'chuck' ? (head.jawReach ?? 0) : 0);
  return { from: nose, to: nose + length, most: radius, least: radius };
}

/** What turns within a zone: over the saddle the chuck or plate as well as the work. */
export function stepsIn(scene: LatheScene, { kind, from, to }: Zone): readonly SweptStep[] {
  const work = stepsWithin(scene.swept, from, to);
  const head = kind === 'over-saddle' || kind === 'over-cross-slide' ? headStep(scene) : undefined;
  return head === undefined ? work : [...stepsWithin([head], from, to), ...work];
}

/** How the work passes each zone while the edge stands at a place along the bed; zones that it does not come to are left out. */
export function readZones(scene: LatheScene, tool: number, cut?: Cut): readonly ZoneRead[] {
  return zonesAt(scene, tool, cut).flatMap((zone) => {
    const worst = stepsIn(scene, zone).reduce<SweptStep | undefined>(
      (most, step) => (most === undefined || step.most > most.most ? step : most),
      undefined,
    );
    if (worst === undefined) return [];
    return [{ ...zone, most: worst.most, margin: zone.radius - worst.most, at: (worst.from + worst.to) / 2 }];
  });
}

/** Where the edge may be asked to stand: over all cuts, or over all of the work while there are none. */
export function toolRange(scene: LatheScene): Span {
  const places = scene.cuts.flatMap(({ from, to }) => [from, to]);
  return places.length === 0 ? scene.extent : [Math.min(...places), Math.max(...places)];
}
