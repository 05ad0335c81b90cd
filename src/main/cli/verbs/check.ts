import { ok } from '../../../shared/base/result.ts';
import type { Severity } from '../../../shared/check/rule.ts';
import { gateWords } from '../../../shared/check/words.ts';
import { indented, type Paint, paint, table } from '../layout.ts';
import { type CheckOutput, checkOutput } from '../output/check-output.ts';
import { readBuild } from '../read-input.ts';
import type { Verb } from '../verb.ts';
import { worksOf } from '../works-of.ts';

export const check: Verb = {
  name: 'check',
  usage: 'FILE [--json]',
  summary: 'all findings, and the gates of every part',
  help: `Reads a build (a .wayw file, its JSON form, or - for JSON on standard input),
says everything that stands in the way of making it, and for each part whether
it is clear to cut. Exit status: 0 nothing stops, 1 something stops.

  --json   the same as JSON (resources/schema/check-output.schema.json)`,
  options: { json: { type: 'boolean' } },
  words: [1, 1],

  async run({ values, files: [file = ''] }, surroundings) {
    const read = await readBuild(file, surroundings);
    if (!read.ok) return read;
    const output = checkOutput(await worksOf(read.value.records));
    const status = output.counts.stop > 0 ? 1 : 0;
    if (values.json) return ok({ text: `${JSON.stringify(output, undefined, 2)}\n`, status });
    return ok({ text: words(output, paint(surroundings.colour)), status });
  },
};

const heads: Readonly<Record<Severity, string>> = { stop: 'Stops', caution: 'Cautions', note: 'Notes' };

function words(output: CheckOutput, ink: Paint): string {
  const { counts, findings } = output;
  const counted = (count: number, noun: string) => `${count} ${noun}${count === 1 ? '' : 's'}`;
  const sum = [counted(counts.stop, 'stop'), counted(counts.caution, 'caution'), counted(counts.note, 'note')];
  if (counts.accepted > 0) sum.push(`${counts.accepted} accepted`);
  const lines = [`${ink.bold(output.build)}: ${sum.join(', ')}`, ''];
  for (const severity of ['stop', 'caution', 'note'] as const) {
    const some = findings.filter((finding) => finding.severity === severity && !finding.accepted);
    if (some.length > 0)
      lines.push(...section(`${heads[severity]} (${some.length})`, some, severityInk(severity, ink)));
  }
  const accepted = findings.filter((finding) => finding.accepted);
  if (accepted.length > 0) lines.push(...section(`Accepted (${accepted.length})`, accepted, ink.quiet));
  lines.push(...gates(output, ink));
  return `${lines.join('\n')}\n`;
}

const severityInk = (severity: Severity, ink: Paint) =>
  severity === 'stop' ? ink.stop : severity === 'caution' ? ink.caution : ink.bold;

function section(head: string, findings: CheckOutput['findings'], ink: (text: string) => string): readonly string[] {
  const lines = [ink(head), ''];
  for (const { title, part, sentence, remedy, accepted, lapsed } of findings) {
    lines.push(`  ${part ? `${part.name}: ` : ''}${title}`, indented(sentence, 4), indented(remedy, 4));
    if (accepted) lines.push(indented(`Accepted: ${accepted.reason}`, 4));
    if (lapsed) lines.push(indented(`It was accepted at other figures: ${lapsed.reason}`, 4));
    lines.push('');
  }
  return lines;
}

function gates({ parts, findings }: CheckOutput, ink: Paint): readonly string[] {
  const byKey = new Map(findings.map((finding) => [finding.key, finding]));
  const shown = new Set(parts.flatMap(({ gates: all }) => all.map(({ gate }) => gate)));
  return [...shown].flatMap((gate) => {
    const rows = parts.flatMap(({ id, name, gates: all }) => {
      const one = all.find((other) => other.gate === gate);
      if (!one) return [];
      const { state, because } = one;
      const titles = new Map<string, number>();
      for (const key of because) {
        const finding = byKey.get(key);
        const upstream = finding?.part && finding.part.id !== id ? `${finding.part.name}: ` : '';
        const title = `${upstream}${finding?.title ?? key}`;
        titles.set(title, (titles.get(title) ?? 0) + 1);
      }
      const why = [...titles].map(([title, count]) => (count > 1 ? `${title} (${count})` : title)).join('; ');
      return [[name, state, why]];
    });
    const head = gateWords[gate];
    return [
      ink.bold(head.charAt(0).toUpperCase() + head.slice(1)),
      '',
      table([{ head: 'part' }, { head: 'gate' }, { head: 'because of' }], rows),
    ];
  });
}
