import type { LinkPair, PartLink } from '../../../engine/views/links.ts';
import type { PartLine } from '../../../engine/views/summary.ts';
import { gateSentence, severityWords } from '../../../kit/marks.tsx';
import { namesOf } from './graph.ts';

const counted = (count: number, [one, many]: readonly [string, string]): string =>
  `${count} ${count === 1 ? one : many}`;
const severities = ['stop', 'caution', 'note'] as const;

/** Open findings in words: `2 stops, 1 note`; undefined when there are none. */
export function findingsInWords(counts: Readonly<Record<(typeof severities)[number], number>>): string | undefined {
  const words = severities.filter((each) => counts[each] > 0).map((each) => counted(counts[each], severityWords[each]));
  return words.length === 0 ? undefined : words.join(', ');
}

/** What the ear gets on coming to a part. */
export function spokenPart(part: PartLine, links: readonly PartLink[]): string {
  const touched = links.filter(({ from }) => from === part.id).length;
  const hung = links.filter(({ to }) => to === part.id).length;
  return [
    part.name,
    ...part.gates.map(({ gate, state }) => gateSentence(gate, state)),
    findingsInWords(part.counts) ?? 'no findings',
    `feeds ${counted(touched, ['part', 'parts'])}`,
    `hangs on ${counted(hung, ['part', 'parts'])}`,
  ].join(', ');
}

/** A link as one line: `3 dimensions: bore, throw, width`. */
export function linkInWords({ pairs }: PartLink): string {
  const names = namesOf(pairs);
  return `${counted(names.length, ['dimension', 'dimensions'])}: ${names.join(', ')}`;
}

/** `bore → journal`: the name taken, and the dimension whose formula takes it. */
export const pairInWords = ({ dimension, name, byName }: LinkPair): string =>
  dimension === undefined ? `${name} (there is none of that name) → ${byName}` : `${name} → ${byName}`;
