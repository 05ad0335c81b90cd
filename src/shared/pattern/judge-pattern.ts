import type { PatternId } from '../base/ids.ts';
import type { Pattern } from '../build/pattern.ts';
import type { Axis } from '../build/station.ts';
import type { Reading } from '../plan/amounts.ts';
import { planeAcross } from '../solid/manifold/kernel.ts';
import type { PlacedBody, Vec3 } from '../solid/placed.ts';
import type { Section } from './cut-sections.ts';
import { type InspectionLine, stretchesOf } from './inspection.ts';

/** A line with what was measured. */
export interface JudgedLine {
  readonly line: InspectionLine;
  readonly state: 'not measured' | 'unreadable' | 'good' | 'under' | 'over';
  readonly measuredMm: number | undefined;
  /** Beyond the least or the most, mm; 0 within. */
  readonly beyondMm: number;
  /** Where it is outside: sections to be cut again. */
  readonly sections: readonly string[];
}

/** A made pattern held against its sheet. */
export interface PatternJudgement {
  readonly pattern: PatternId;
  readonly lines: readonly JudgedLine[];
  /** Trials on the machine that did not fit. */
  readonly misfits: readonly string[];
  /** `outside` where a line or a trial is; `open` while lines are left. */
  readonly state: 'outside' | 'open' | 'good';
  /** Names of sections that can be kept, and of those that must be cut again. */
  readonly keep: readonly string[];
  readonly cutAgain: readonly string[];
}

export interface JudgeGiven {
  readonly lines: readonly InspectionLine[];
  readonly reading: Reading;
  /** Empty where the pattern is not cut into sections. */
  readonly sections: readonly Section[];
  readonly sectionAxis: Axis | undefined;
  readonly bodies: readonly PlacedBody[];
  readonly factors: Vec3;
}

/** Places nearer than this are one, mm. */
const SAME_MM = 0.5;

/** Holds what was measured on a pattern against its sheet, line by line. */
export function judgePattern(pattern: Pattern, given: JudgeGiven): PatternJudgement {
  const lines = given.lines.map((line) => judgeLine(line, pattern, given));
  const misfits = pattern.trials.flatMap(({ fits, what }) => (fits ? [] : [what]));
  const again = new Set(lines.flatMap(({ sections }) => sections));
  const isOutside = misfits.length > 0 || lines.some(({ state }) => state === 'under' || state === 'over');
  const isOpen = lines.some(({ state }) => state === 'not measured' || state === 'unreadable');
  return {
    pattern: pattern.id,
    lines,
    misfits,
    state: isOutside ? 'outside' : isOpen ? 'open' : 'good',
    keep: given.sections.flatMap(({ name }) => (again.has(name) ? [] : [name])),
    cutAgain: given.sections.flatMap(({ name }) => (again.has(name) ? [name] : [])),
  };
}

function judgeLine(line: InspectionLine, { measured }: Pattern, given: JudgeGiven): JudgedLine {
  // What was measured last counts.
  const written = measured.findLast(({ of }) => of === line.key);
  const rest = { line, measuredMm: undefined, beyondMm: 0, sections: [] };
  if (!written) return { ...rest, state: 'not measured' };
  const read = given.reading.plain(written.value, `measured/${line.key}`);
  if (!read.ok) return { ...rest, state: 'unreadable' };
  if (read.value === undefined) return { ...rest, state: 'not measured' };
  const measuredMm = Math.abs(read.value);
  const [least, most] = line.go;
  const under = least === undefined ? 0 : Math.max(0, least - measuredMm);
  const over = most === undefined ? 0 : Math.max(0, measuredMm - most);
  if (under === 0 && over === 0) return { ...rest, state: 'good', measuredMm };
  const sections = sectionsOf(line, given).map(({ name }) => name);
  return { line, measuredMm, state: under > 0 ? 'under' : 'over', beyondMm: Math.max(under, over), sections };
}

/**
 * The sections in which a wrong size lies: of a length along the cuts those in which one of its ends stands; of any other those
 * through which the bodies go that it measures, and of one overall those that reach its ends.
 */
function sectionsOf(line: InspectionLine, { sections, sectionAxis, bodies, factors }: JudgeGiven): readonly Section[] {
  if (sectionAxis === undefined) return [];
  const along = line.places.filter(({ axis }) => axis === sectionAxis);
  if (along.length > 0) {
    return sections.filter(({ low, high }) => along.some(({ at }) => at >= low - SAME_MM && at <= high + SAME_MM));
  }
  if (line.bodies.length === 0) {
    return sections.filter(({ box }) =>
      line.places.some(({ axis, at }) => {
        const i = planeAcross[sectionAxis].indexOf(axis);
        return Math.abs(box.min[i]! - at) < SAME_MM || Math.abs(box.max[i]! - at) < SAME_MM;
      }),
    );
  }
  const stretches = stretchesOf(line.bodies, sectionAxis, bodies, factors);
  return sections.filter(({ low, high }) =>
    stretches.some(([from, to]) => from < high - SAME_MM && to > low + SAME_MM),
  );
}
