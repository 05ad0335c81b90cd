import { ok } from '../../../shared/base/result.ts';
import { buildOf, recordOf, settingsOf } from '../../../shared/build/look-up.ts';
import { createDrawing } from '../../../shared/drawing/create-drawing.ts';
import { formatLimits, formatQuantity } from '../../../shared/quantity/format.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';
import { findStation } from '../find-named.ts';
import { indented, type Paint, paint, table } from '../layout.ts';
import type { ChainOutput } from '../output/chain-output.ts';
import { readBuild } from '../read-input.ts';
import { problem, type Verb } from '../verb.ts';

type Figures = 'nominalMm' | 'worstCase' | 'rss';
type Tied = ChainOutput & { readonly [K in Figures]: NonNullable<ChainOutput[K]> };

export const chain: Verb = {
  name: 'chain',
  usage: 'FILE FROM TO [--json]',
  summary: 'the distance between two stations: nominal, worst case and likely',
  help: `Reads a build and adds up the dimensions between two stations along one axis of
one part. Stations are written part/axis/station, for example
"guide column/Z/top". Exit status: 0 there is a chain, 1 no dimension ties the
two stations.

  --json   the same as JSON (resources/schema/chain-output.schema.json)`,
  options: { json: { type: 'boolean' } },
  words: [3, 3],

  async run({ values, files: [file = '', fromText = '', toText = ''] }, surroundings) {
    const read = await readBuild(file, surroundings);
    if (!read.ok) return read;
    const build = buildOf(read.value.records);
    const from = findStation(build, fromText);
    if (!from.ok) return from;
    const to = findStation(build, toText);
    if (!to.ok) return to;
    const { part, station: start } = from.value;
    const { station: end } = to.value;
    if (part.id !== to.value.part.id || start.axis !== end.axis) {
      return problem(toText, 'The two stations do not lie along one axis of one part.', 'Name two stations that do.');
    }
    const drawing = createDrawing(build);
    const distance = drawing.distance(start.id, end.id);
    const untied: ChainOutput = {
      format: 'waywright-chain',
      version: 1,
      part: { id: part.id, name: part.name },
      axis: start.axis,
      from: { id: start.id, name: start.name },
      to: { id: end.id, name: end.name },
      tied: false,
      links: [],
    };
    if (!distance) {
      const text = `No dimension ties ${start.name} to ${end.name} along ${start.axis} of ${part.name}.`;
      return ok({ text: values.json ? asJson(untied) : `${text}\n`, status: 1 });
    }
    const { value, band } = distance;
    const output = {
      ...untied,
      tied: true,
      nominalMm: value,
      worstCase: { leastMm: value + band.minus, mostMm: value + band.plus },
      rss: { leastMm: value + band.rssCentre - band.rss, mostMm: value + band.rssCentre + band.rss },
      links: distance.path.map(({ dimension, sign }) => {
        const record = recordOf(build, 'dimension', dimension);
        const { value: valueMm = 0, limits } = drawing.dimension(dimension);
        return {
          id: dimension,
          name: record?.name ?? dimension,
          sign,
          written: record?.value ?? '',
          valueMm,
          ...(limits ? { lowerMm: limits.lower, upperMm: limits.upper } : {}),
          limits: limits?.row ?? '',
        };
      }),
    };
    if (values.json) return ok({ text: asJson(output), status: 0 });
    return ok({ text: words(output, settingsOf(build).lengthUnit, paint(surroundings.colour)), status: 0 });
  },
};

const asJson = (output: ChainOutput): string => `${JSON.stringify(output, undefined, 2)}\n`;

function words(output: Tied, unit: LengthUnit, ink: Paint): string {
  const length = (valueMm: number) => formatQuantity(valueMm, 'length', { unit });
  const { from, to, axis, part, nominalMm, worstCase, rss, links } = output;
  const rows = links.map(({ name, sign, written, valueMm, lowerMm, upperMm, limits }) => [
    sign === 1 ? name : `${name}, backwards`,
    written,
    length(sign * valueMm),
    lowerMm === undefined || upperMm === undefined
      ? 'none'
      : formatLimits({ minus: lowerMm - valueMm, plus: upperMm - valueMm }, 'length', { unit }),
    limits,
  ]);
  const columns = ['dimension', 'written', 'comes to', 'limits', 'from'].map((head) => ({ head }));
  return `${[
    ink.bold(`${from.name} to ${to.name} along ${axis} of ${part.name}`),
    '',
    `  nominal       ${length(nominalMm)}`,
    `  worst case    ${length(worstCase.leastMm)} to ${length(worstCase.mostMm)}`,
    `  likely (RSS)  ${length(rss.leastMm)} to ${length(rss.mostMm)}`,
    '',
    links.length === 0 ? indented('The two are one station.', 2) : table(columns, rows),
  ].join('\n')}\n`;
}
