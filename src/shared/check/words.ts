import { formatQuantity } from '../quantity/format.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import { ruleById } from './registry.ts';
import type { Finding, Gate, Severity } from './rule.ts';

/** A finding as the reader sees it. */
export interface FindingWords {
  /** What kind of finding it is, without particulars. */
  readonly title: string;
  /** What is wrong, and where. */
  readonly sentence: string;
  /** What to do. */
  readonly remedy: string;
}

export const severityWords: Readonly<Record<Severity, string>> = { stop: 'Stop', caution: 'Caution', note: 'Note' };

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

/** Fills `{name}`: a name ending in `Mm` is shown as a length, `Deg` as an angle, `Kg` as a mass, all else as it is. */
export function fillPlaceholders(text: string, data: Finding['data'], unit: LengthUnit): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const value = data[name];
    if (value === undefined) return whole;
    if (typeof value === 'string') return value;
    if (name.endsWith('Mm')) return formatQuantity(value, 'length', { unit });
    if (name.endsWith('Deg')) return formatQuantity(value, 'angle', { unit });
    if (name.endsWith('Kg')) return formatQuantity(value, 'mass', { unit });
    return formatQuantity(value, 'number', { unit });
  });
}
