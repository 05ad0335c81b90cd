import { ok, type Result } from '../../../shared/base/result.ts';
import { describeProblem } from '../../../shared/formula/messages.ts';
import { nearestName } from '../../../shared/formula/nearest-name.ts';
import { formatNumber } from '../../../shared/quantity/format.ts';
import { parseThread, type Thread } from '../../../shared/quantity/parse-thread.ts';
import { toInches } from '../../../shared/quantity/units.ts';
import { knownThreads, threadsLike } from '../../../shared/tables/threads-known.ts';
import { indented, type Paint, paint, table } from '../layout.ts';
import { type ThreadOutput, threadOutput } from '../output/thread-output.ts';
import { type CallProblem, problem, type Verb } from '../verb.ts';

export const thread: Verb = {
  name: 'thread',
  usage: 'NAME [--percent P] [--json]',
  summary: 'sizes of a thread, its tap drill and its clearance holes',
  help: `Says the diameters of a thread, the hole to tap, the drills that come nearest
and how much thread each leaves, the holes a screw passes through, and the area
that carries a pull. NAME is M8, M8x1, 1/4-20, "#10-32", 3/8-16 BSW, Tr 20x4 …
Exit status: 2 the thread is not known; the nearest known ones are named.

Status: "read" on a published page, or "from memory" and still to be checked.

  --percent P  the hole that leaves P percent of the thread, instead of the rule
               of the trade, major diameter less pitch
  --json       the same as JSON (resources/schema/thread-output.schema.json)`,
  options: { json: { type: 'boolean' }, percent: { type: 'string' } },
  words: [1, 5],

  async run({ values, files }, surroundings) {
    const written = files.join(' ').trim();
    const percent = readPercent(values.percent);
    if (!percent.ok) return percent;
    const read = readThread(written);
    if (!read.ok) return read;
    const output = threadOutput(written, read.value, percent.value);
    const text = values.json ? `${JSON.stringify(output, undefined, 2)}\n` : words(output, paint(surroundings.colour));
    return ok({ text, status: 0 });
  },
};

function readPercent(written: string | boolean | undefined): Result<number | undefined, CallProblem> {
  if (typeof written !== 'string') return ok(undefined);
  const text = written.replace(/\s*%$/, '').replace(',', '.').trim();
  const percent = /^\d{1,3}(?:\.\d{1,6})?$/.test(text) ? Number(text) : Number.NaN;
  if (percent > 0 && percent <= 100) return ok(percent);
  return problem(`--percent ${written}`, 'The share of the thread is no percentage up to 100.', 'Write it as 65.');
}

function readThread(written: string): Result<Thread, CallProblem> {
  const read = parseThread(written);
  if (read?.ok) return read;
  const sentence = (read && describeProblem(read.error)) ?? 'No thread of this name is known.';
  const like = threadsLike(written).map(({ name }) => name);
  const nearest =
    like.length > 0
      ? undefined
      : nearestName(
          written,
          knownThreads.map(({ name }) => name),
        );
  const names = nearest === undefined ? like : [nearest];
  const hint =
    names.length > 0 ? `Nearest known: ${names.join(', ')}.` : 'Threads are written M8, M8x1, 1/4-20, #10-32.';
  return problem(written, sentence, hint);
}

const mm = (value: number): string => formatNumber(value, 3);
const inches = (value: number): string => formatNumber(toInches(value), 4);
const share = (percent: number): string => `${formatNumber(percent, 1)} %`;

function words(output: ThreadOutput, ink: Paint): string {
  const { basic, majorMm, pitchMm, perInch, form, hand, series, listed, nearestListed, written } = output;
  const name = listed?.name ?? written;
  const kind = [form, series, hand === 'left' ? 'left hand' : undefined].filter((word) => word !== undefined);
  const sizes: readonly (readonly [string, number])[] = [
    ['major diameter', majorMm],
    ['pitch', pitchMm],
    ['pitch diameter', basic.pitchDiameterMm],
    ['minor diameter of the nut', basic.minorNutMm],
    ['minor diameter of the screw', basic.minorScrewMm],
  ];
  const unlisted =
    nearestListed.length > 0
      ? `Not a listed thread; nearest: ${nearestListed.join(', ')}.`
      : 'Of this form no list is held: sizes by formula.';
  const area = `${formatNumber(basic.stressAreaMm2, basic.stressAreaMm2 < 100 ? 2 : 1)} mm²`;
  const areaInch = form === 'unified' ? `, ${formatNumber(toInches(toInches(basic.stressAreaMm2)), 4)} in²` : '';
  return `${[
    ink.bold(`${name} (${kind.join(', ')})`),
    indented(listed ? `Listed in ${listed.source} (${listed.status}).` : unlisted, 2),
    '',
    table(
      [{ head: 'size' }, { head: 'mm', align: 'right' }, { head: 'in', align: 'right' }],
      sizes.map(([what, value]) => [what, mm(value), inches(value)]),
    ),
    '',
    `  ${formatNumber(perInch, 2)} threads per inch; stress area ${area}${areaInch}`,
    ink.quiet(indented(`${sentenceOf(basic.source, basic.status)} Area: ${basic.stressAreaSource}.`, 2)),
    '',
    ...tapWords(output.tapHole, ink),
    ...clearanceWords(output, ink),
  ].join('\n')}\n`;
}

/** A source as a sentence that says whether it was read. */
const sentenceOf = (source: string, status: string): string =>
  source.includes(`(${status})`) ? `${source}.` : `${source} (${status}).`;

function tapWords(tapHole: ThreadOutput['tapHole'], ink: Paint): readonly string[] {
  const { diameterMm, percent, rule, drills, fullThread } = tapHole;
  const how = rule === 'major less pitch' ? 'major diameter less pitch' : `${share(percent)} of thread asked for`;
  const lines = [
    ink.bold(`Hole to tap: ${mm(diameterMm)} mm, ${inches(diameterMm)} in`),
    `  ${how}${rule === 'major less pitch' ? `: leaves ${share(percent)} of the thread` : ''}`,
  ];
  if (tapHole.table) {
    const { drill, others, source, status } = tapHole.table;
    const also = others === undefined ? '' : `; other tables: ${others}`;
    lines.push(indented(`Tables give ${drill}, ${share(tapHole.table.percent)}${also}. ${source} (${status}).`, 2));
  }
  const rows = drills.map((drill) => [
    drill.series,
    drill.name,
    mm(drill.diameterMm),
    inches(drill.diameterMm),
    share(drill.percent),
    drill.belowMinor ? 'below minor' : drill.nearest ? 'nearest' : '',
    drill.status,
  ]);
  const right = { align: 'right' } as const;
  lines.push(
    '',
    table(
      [
        { head: 'series' },
        { head: 'drill' },
        { head: 'mm', ...right },
        { head: 'in', ...right },
        { head: 'thread', ...right },
        { head: '' },
        { head: 'status' },
      ],
      rows,
    ),
    '',
    ink.quiet(indented(`100 % of thread takes ${fullThread}.`, 2)),
  );
  return lines;
}

function clearanceWords({ clearance, form }: ThreadOutput, ink: Paint): readonly string[] {
  const [first] = clearance;
  if (first === undefined) {
    const listed = form === 'metric' || form === 'unified';
    return [
      '',
      listed ? 'The standard lists no clearance holes for this size.' : 'No clearance holes are listed for this form.',
    ];
  }
  const right = { align: 'right' } as const;
  return [
    '',
    ink.bold(`Clearance holes (${first.source})`),
    '',
    table(
      [{ head: 'fit' }, { head: 'drill' }, { head: 'mm', ...right }, { head: 'in', ...right }, { head: 'status' }],
      clearance.map(({ fit, drill, diameterMm, status }) => [fit, drill, mm(diameterMm), inches(diameterMm), status]),
    ),
  ];
}
