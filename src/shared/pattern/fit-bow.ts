import type { Machine } from '../build/machine.ts';
import { readFigures } from '../plan/machine-figures-read.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import { type FlatLoop, isOpening, regionBox } from '../solid/flat-region.ts';
import { type PracticeFigure, patternPractice } from '../tables/pattern-practice.ts';
import type { Section } from './cut-sections.ts';
import type { PatternUnknown } from './pattern-unknown.ts';

/**
 * What a bow must have for a section:
 * - `through`: wire to stand through it, and a little beyond on both sides;
 * - `slice`: wire across the blank, where its board is first sliced to thickness;
 * - `round`: depth to reach the middle of the blank, as the bow is led all round it;
 * - `opening`: depth to reach the far side of an opening from the nearest side of the blank, through which the wire is threaded.
 */
export type BowNeedKind = 'through' | 'slice' | 'round' | 'opening';

export interface BowNeed {
  readonly kind: BowNeedKind;
  readonly section: string;
  readonly needsMm: number;
  /** Undefined where the bow's figure is not known. */
  readonly hasMm: number | undefined;
}

export interface BowFit {
  /** The section that asks for most, of each kind that comes up. */
  readonly most: readonly BowNeed[];
  /** All that the bow has too little for. */
  readonly short: readonly BowNeed[];
  readonly unknown: readonly PatternUnknown[];
}

/** The kerf of a bow as it was measured; else the starting value. */
export function kerfOf(bow: Machine | undefined, lengthUnit: LengthUnit): PracticeFigure {
  const own = bow && readFigures(bow, lengthUnit).values.get('kerf');
  return own === undefined
    ? patternPractice.kerf
    : { value: own, status: 'written', source: `measured on ${bow?.name}` };
}

/** Whether a bow is large enough for all sections. */
export function fitBow(
  bow: Machine,
  sections: readonly Section[],
  sliced: readonly string[],
  lengthUnit: LengthUnit,
): BowFit {
  const { values } = readFigures(bow, lengthUnit);
  const [wire, throat] = [values.get('wireLength'), values.get('throat')];
  const unknown = (['wireLength', 'throat'] as const).flatMap((key): readonly PatternUnknown[] =>
    values.has(key) ? [] : [{ is: 'figure', machine: bow.id, key }],
  );
  const needs = sections.flatMap((section) => needsOf(section, sliced.includes(section.name), wire, throat));
  const most = new Map<BowNeedKind, BowNeed>();
  for (const need of needs) {
    const before = most.get(need.kind);
    if (!before || need.needsMm > before.needsMm) most.set(need.kind, need);
  }
  const short = needs.filter(({ hasMm, needsMm }) => hasMm !== undefined && needsMm > hasMm);
  return { most: [...most.values()], short, unknown };
}

function needsOf(
  { name, low, high, box, wire: way, cut, lower, outline }: Section,
  isSliced: boolean,
  wire: number | undefined,
  throat: number | undefined,
): readonly BowNeed[] {
  const beyond = 2 * patternPractice.wireBeyond.value;
  const smaller = Math.min(box.max[0] - box.min[0], box.max[1] - box.min[1]);
  const needs: BowNeed[] = [{ kind: 'through', section: name, needsMm: high - low + beyond, hasMm: wire }];
  if (isSliced) needs.push({ kind: 'slice', section: name, needsMm: smaller + beyond, hasMm: wire });
  needs.push({ kind: 'round', section: name, needsMm: smaller / 2, hasMm: throat });
  const blank = regionBox(way.lower) ?? box;
  for (const opening of (cut === 'ruled' ? lower : outline).filter(isOpening)) {
    needs.push({ kind: 'opening', section: name, needsMm: depthTo(opening, blank), hasMm: throat });
  }
  return needs;
}

/** From the side of the blank that is nearest to it, to the far side of an opening. */
function depthTo(opening: FlatLoop, { min, max }: NonNullable<ReturnType<typeof regionBox>>): number {
  const box = regionBox([opening])!;
  return Math.min(box.max[0] - min[0], max[0] - box.min[0], box.max[1] - min[1], max[1] - box.min[1]);
}
