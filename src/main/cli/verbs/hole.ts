import { err, ok, type Result } from '../../../shared/base/result.ts';
import { describeProblem } from '../../../shared/formula/messages.ts';
import { parseWritten } from '../../../shared/formula/parse-written.ts';
import { formatNumber } from '../../../shared/quantity/format.ts';
import { toInches } from '../../../shared/quantity/units.ts';
import { drillNamed } from '../../../shared/tables/drills.ts';
import { type Paint, paint, table } from '../layout.ts';
import { type HoleOutput, holeOutput } from '../output/hole-output.ts';
import { type CallProblem, problem, type Verb } from '../verb.ts';

export const hole: Verb = {
  name: 'hole',
  usage: 'SIZE [--json]',
  summary: 'the nearest metric, number, letter and fractional drills for a hole',
  help: `Says which drills come nearest to a hole and how far off they are. SIZE is a
diameter (8.5, 8.5 mm, 0.332 in, 21/64) or a drill by its name (No 7, letter F).
A number without a unit is in mm, a fraction without one in inches.

  --json   the same as JSON (resources/schema/hole-output.schema.json)`,
  options: { json: { type: 'boolean' } },
  words: [1, 3],

  async run({ values, files }, surroundings) {
    const written = files.join(' ').trim();
    const diameterMm = readDiameter(written);
    if (!diameterMm.ok) return diameterMm;
    const output = holeOutput(written, diameterMm.value);
    const text = values.json ? `${JSON.stringify(output, undefined, 2)}\n` : words(output, paint(surroundings.colour));
    return ok({ text, status: 0 });
  },
};

/** No hole of a machine is wider; a larger number has lost its point or its unit. */
const WIDEST_MM = 10_000;

function readDiameter(written: string): Result<number, CallProblem> {
  const examples = 'Write it as 8.5, 0.332 in, 21/64, No 7 or letter F.';
  const named = drillNamed(written);
  if (named !== undefined) {
    if ('drill' in named) return ok(named.drill.diameterMm);
    return problem(written, `There is no drill No ${named.unknownNumber}.`, 'Number drills run from No 1 to No 80.');
  }
  const read = parseWritten(written, { kind: 'length', lengthUnit: 'mm' });
  if (!read.ok) {
    return err({
      place: written,
      sentence: describeProblem(read.error) ?? 'This is no diameter.',
      remedy: examples,
    });
  }
  if (read.value.is !== 'quantity')
    return problem(written, 'This is no diameter of a hole or name of a drill.', examples);
  const { value } = read.value;
  if (!(value > 0)) return problem(written, 'A hole is wider than nought.', 'Write a diameter above nought.');
  if (value > WIDEST_MM) {
    return problem(written, 'A hole this wide is not drilled.', `Write a diameter up to ${WIDEST_MM / 1000} m.`);
  }
  return ok(value);
}

const mm = (value: number): string => formatNumber(value, 3);
const inches = (value: number): string => formatNumber(toInches(value), 4);
const signed = (value: number): string =>
  Math.abs(value) < 5e-7 ? '0' : `${value > 0 ? '+' : '−'}${formatNumber(Math.abs(value), 3)}`;

function words({ written, diameterMm, series }: HoleOutput, ink: Paint): string {
  const rows = series.flatMap(({ series: name, drills, thinnestMm, thickestMm }) =>
    drills.length === 0
      ? [[name, 'none near', `${mm(thinnestMm)} to ${mm(thickestMm)}`, '', '', '']]
      : drills.map((drill, i) => [
          i === 0 ? name : '',
          drill.name,
          mm(drill.diameterMm),
          inches(drill.diameterMm),
          signed(drill.differenceMm),
          drill.status,
        ]),
  );
  return `${[
    ink.bold(`Hole ${written}: ${mm(diameterMm)} mm, ${inches(diameterMm)} in`),
    '',
    table(
      [
        { head: 'series' },
        { head: 'drill' },
        { head: 'mm', align: 'right' },
        { head: 'in', align: 'right' },
        { head: 'off by mm', align: 'right' },
        { head: 'status' },
      ],
      rows,
    ),
    '',
    ...sourcesOf(series).map((source) => ink.quiet(`  ${source}`)),
  ].join('\n')}\n`;
}

const sourcesOf = (series: HoleOutput['series']): readonly string[] => [
  ...new Set(series.flatMap(({ drills }) => drills.map(({ series: name, source }) => `${name}: ${source}`))),
];
