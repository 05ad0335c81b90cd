import { ok } from '../../../shared/base/result.ts';
import { settingsOf } from '../../../shared/build/look-up.ts';
import { findingWords } from '../../../shared/check/words.ts';
import type { Works } from '../../../shared/check/works.ts';
import { formatLimits, formatQuantity } from '../../../shared/quantity/format.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';
import { findPart } from '../find-named.ts';
import { indented, type Paint, paint, table } from '../layout.ts';
import { type PartOutput, partOutput } from '../output/part-output.ts';
import { readBuild } from '../read-input.ts';
import type { Verb } from '../verb.ts';
import { worksOf } from '../works-of.ts';
import { bodyTable, solidTable } from './part-solid.ts';

export const part: Verb = {
  name: 'part',
  usage: 'FILE PART [--json]',
  summary: 'stations of a part with bands, its dimensions, bodies, mass, centre',
  help: `Reads a build and says of one part (by name or id) where each station stands
from its datum, how far it may stray, what every dimension comes to, and what
its bodies make: volume, mass, surface, size and centre, finished and as cast.
Exit status: 0 nothing stops this part, 1 something does.

  --json   the same as JSON (resources/schema/part-output.schema.json)`,
  options: { json: { type: 'boolean' } },
  words: [2, 2],

  async run({ values, files: [file = '', name = ''] }, surroundings) {
    const read = await readBuild(file, surroundings);
    if (!read.ok) return read;
    const works = await worksOf(read.value.records);
    const found = findPart(works.build, name);
    if (!found.ok) return found;
    const output = partOutput(works, found.value);
    const stops = works.findingsOf(found.value.id).some(({ severity, accepted }) => severity === 'stop' && !accepted);
    const text = values.json
      ? `${JSON.stringify(output, undefined, 2)}\n`
      : words(output, works, paint(surroundings.colour));
    return ok({ text, status: stops ? 1 : 0 });
  },
};

function words(output: PartOutput, works: Works, ink: Paint): string {
  const unit = settingsOf(works.build).lengthUnit;
  const { name, number, make, material, quantity, id } = output.part;
  const facts = [make, material, number, quantity > 1 ? `${quantity} off` : ''].filter((fact) => fact !== '');
  const lines = [`${ink.bold(name)} (${facts.join(', ')})`, ''];
  for (const axis of output.axes) lines.push(...axisWords(axis, unit, ink));
  if (output.dimensions.length > 0) {
    const rows = output.dimensions.map((dimension) => dimensionCells(dimension, unit));
    const columns = ['dimension', 'measures', 'written', 'comes to', 'limits', 'source'].map((head) => ({ head }));
    lines.push(ink.bold('Dimensions'), '', table(columns, rows), '');
  }
  if (output.bodies.length > 0) lines.push(ink.bold('Bodies'), '', bodyTable(output.bodies), '');
  if (output.solid) lines.push(ink.bold('Solid'), '', solidTable(output.solid, unit), '');
  const open = works.findingsOf(id as never).filter(({ accepted }) => !accepted);
  if (open.length > 0) {
    lines.push(ink.bold('Findings'), '');
    for (const finding of open) {
      const { title, sentence, remedy } = findingWords(finding, unit);
      lines.push(`  ${finding.severity}: ${title}`, indented(sentence, 4), indented(remedy, 4), '');
    }
  }
  return `${lines.join('\n').trimEnd()}\n`;
}

function axisWords({ axis, stations }: PartOutput['axes'][number], unit: LengthUnit, ink: Paint): readonly string[] {
  const length = (valueMm: number) => formatQuantity(valueMm, 'length', { unit });
  const rows = stations.map(({ name, form, datum, group, atMm, band }) => {
    const origin = stations.find((other) => other.group === group && other.path.length === 0);
    const at =
      group === 0 ? length(atMm) : `${length(atMm)} from ${origin?.name ?? 'its first'} (not tied to the datum)`;
    const isExact = band.minusMm === 0 && band.plusMm === 0;
    return [
      name,
      datum ? `${form}, datum` : form,
      at,
      isExact ? '' : formatLimits({ minus: band.minusMm, plus: band.plusMm }, 'length', { unit }),
      isExact ? '' : `±${length(band.rssMm)}`,
    ];
  });
  const columns = [
    { head: 'station' },
    { head: 'form' },
    { head: 'at' },
    { head: 'worst case' },
    { head: 'likely (RSS)' },
  ];
  return [ink.bold(`Along ${axis}`), '', table(columns, rows), ''];
}

function dimensionCells(dimension: PartOutput['dimensions'][number], unit: LengthUnit): readonly string[] {
  const { name, measures, written, value, limits, source, unit: kind, whyNot } = dimension;
  const what = measures.type === 'size' ? measures.form : `${measures.axis}: ${measures.from} to ${measures.to}`;
  const span =
    limits && value !== undefined
      ? formatLimits({ minus: limits.lower - value, plus: limits.upper - value }, kind, { unit })
      : '';
  const why = { empty: 'no value', text: 'not readable', ring: 'ring of formulas', waiting: 'waits for others' };
  const comesTo = value === undefined ? why[whyNot ?? 'empty'] : formatQuantity(value, kind, { unit });
  return [name, what, written, comesTo, span, source];
}
