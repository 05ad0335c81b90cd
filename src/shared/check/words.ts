import { formatQuantity } from '../quantity/format.ts';
import type { Kind, LengthUnit } from '../quantity/kind.ts';
import { figureEndings } from './figure.ts';
import { ruleById } from './registry.ts';
import type { Finding, Gate } from './rule.ts';

/** A finding as the reader sees it. */
export interface FindingWords {
  /** What kind of finding it is, without particulars. */
  readonly title: string;
  /** What is wrong, and where. */
  readonly sentence: string;
  /** What to do. */
  readonly remedy: string;
}

export const gateWords: Readonly<Record<Gate, string>> = {
  cut: 'clear to cut',
  pour: 'clear to pour',
  machine: 'clear to machine',
  fit: 'clear to fit',
};

/** Puts a finding into words, its figures in the reader's units. */
export function findingWords(finding: Pick<Finding, 'rule' | 'message' | 'data'>, unit: LengthUnit): FindingWords {
  const rule = ruleById(finding.rule);
  const sentence = rule?.messages[finding.message] ?? '';
  const remedy = rule?.remedies[finding.message] ?? '';
  return {
    title: rule?.title ?? finding.rule,
    sentence: fillPlaceholders(sentence, finding.data, unit),
    remedy: fillPlaceholders(remedy, finding.data, unit),
  };
}

/**
 * Fills `{name}`: from the figure of that name, or from the one with an ending that tells its kind (`nameMm` a length,
 * `nameDeg` an angle, `nameKg` a mass, `nameCelsius` a temperature). Texts stand as they are.
 */
export function fillPlaceholders(text: string, data: Finding['data'], unit: LengthUnit): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => {
    for (const [ending, kind] of endings) {
      const value = data[`${name}${ending}`];
      if (value === undefined) continue;
      if (typeof value === 'string') return value;
      const own = endings.find(([known]) => known !== '' && name.endsWith(known));
      return formatQuantity(value, own ? own[1] : kind, { unit });
    }
    return whole;
  });
}

const endings: readonly (readonly [ending: string, kind: Kind])[] = [['', 'number'], ...Object.entries(figureEndings)];
