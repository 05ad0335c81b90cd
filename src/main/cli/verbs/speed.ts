import { ok, type Result } from '../../../shared/base/result.ts';
import { type Edge, edges, type Process, processes } from '../../../shared/build/operation.ts';
import { describeProblem } from '../../../shared/formula/messages.ts';
import { nearestName } from '../../../shared/formula/nearest-name.ts';
import { parseWritten } from '../../../shared/formula/parse-written.ts';
import { type AdviceWanted, adviseCut } from '../../../shared/machining/cutting/advise.ts';
import type { MachineRange } from '../../../shared/machining/cutting/conditions.ts';
import { formatNumber } from '../../../shared/quantity/format.ts';
import { parseThread } from '../../../shared/quantity/parse-thread.ts';
import { toInches } from '../../../shared/quantity/units.ts';
import { cuttingMetalRows, cuttingMetals, type FoundMetal, findMetal } from '../../../shared/tables/cutting-metals.ts';
import { drillNamed } from '../../../shared/tables/drills.ts';
import { type MaterialRow, materialNamed, materials } from '../../../shared/tables/materials.ts';
import { indented, type Paint, paint, table } from '../layout.ts';
import { type SpeedOutput, speedOutput } from '../output/speed-output.ts';
import { type CallProblem, problem, type ReadCall, type Verb } from '../verb.ts';

/** Processes that the tables speak of. */
const told = processes.filter((process) => !['scrape', 'lap', 'file'].includes(process));

export const speed: Verb = {
  name: 'speed',
  usage: 'MATERIAL PROCESS [DIAMETER] [--rpm-range A-B] [--edge E] …',
  summary: 'turns, feed and power to begin a cut with, and where they come from',
  help: `Says how fast to turn, how fast to feed and how much of the motor it takes.
MATERIAL is a name of the table: aluminium, cast iron, LM25, mild steel, C36000.
PROCESS is ${told.slice(0, 8).join(', ')},
${told.slice(8).join(', ')}.
DIAMETER is that of the work where it turns, of the tool where that does: 25,
1/2", No 7; of a tap its thread, M8; of shape and plane the length of the
stroke; of grind that of the wheel; of a saw it is left out.
Exit status: 2 nothing is known of the material, or the call cannot be read.

Status: "read" on a published page, "from memory" and still to be checked, or
"common practice", which has no source. All are where to begin, not rules: the
rigidity of machine, work and tool decides. Follow the machine's own manual.

  --edge E         HSS (when left out), carbide or carbon-steel
  --rpm-range A-B  slowest and fastest turns or strokes of the machine, of a
                   bandsaw m/min: 70-1200, 70- or 0-1200
  --finish         a cut to size: the middle of the table's speeds, a fine feed
  --depth D        depth of cut for the power, per side; else the table's own
  --breadth B      of milling: how much of the cutter is at work; else all
  --teeth N        of a milling cutter; 4 when left out
  --json           the same as JSON (resources/schema/speed-output.schema.json)`,
  options: {
    json: { type: 'boolean' },
    finish: { type: 'boolean' },
    edge: { type: 'string' },
    'rpm-range': { type: 'string' },
    depth: { type: 'string' },
    breadth: { type: 'string' },
    teeth: { type: 'string' },
  },
  words: [2, 12],

  async run(call, surroundings) {
    const read = readWanted(call);
    if (!read.ok) return read;
    const { material, wanted } = read.value;
    const advice = adviseCut(wanted);
    if (!advice) {
      return problem(
        `${material} ${wanted.process}`,
        'The tables have no speed for this.',
        'Ask the maker of the tool.',
      );
    }
    const output = speedOutput(material, wanted, advice);
    const { json } = call.values;
    const text = json ? `${JSON.stringify(output, undefined, 2)}\n` : words(output, paint(surroundings.colour));
    return ok({ text, status: 0 });
  },
};

interface ReadWanted {
  readonly material: string;
  readonly wanted: AdviceWanted;
}

function readWanted({ values, files }: ReadCall): Result<ReadWanted, CallProblem> {
  // The material may be of several words, and so may the diameter: the process stands between them.
  const at = files.findIndex((word, i) => i > 0 && (processes as readonly string[]).includes(word.toLowerCase()));
  if (at < 0) return noProcess(files);
  const material = files.slice(0, at).join(' ').trim();
  const process = files[at]!.toLowerCase() as Process;
  if (!told.includes(process)) {
    return problem(process, 'This is done by hand, and has no speed.', `Ask about one of: ${told.join(', ')}.`);
  }
  const found = findMaterial(material);
  if (!found.ok) return found;
  const size = readSize(files.slice(at + 1).join(' '), process);
  if (!size.ok) return size;
  const edge = readEdge(values.edge);
  if (!edge.ok) return edge;
  const machine = readRange(values['rpm-range']);
  if (!machine.ok) return machine;
  const depth = readLength('--depth', values.depth);
  if (!depth.ok) return depth;
  const breadth = readLength('--breadth', values.breadth);
  if (!breadth.ok) return breadth;
  const teeth = readTeeth(values.teeth);
  if (!teeth.ok) return teeth;
  const wanted: AdviceWanted = {
    found: found.value,
    process,
    edge: edge.value,
    ...size.value,
    finish: values.finish === true,
    machine: machine.value,
    teeth: teeth.value,
    depthMm: depth.value,
    breadthMm: breadth.value,
  };
  return ok({ material, wanted });
}

function noProcess(files: readonly string[]): Result<never, CallProblem> {
  for (const word of files.slice(1)) {
    const nearest = nearestName(word.toLowerCase(), processes);
    if (nearest !== undefined) return problem(word, 'This is no process.', `Did you mean ${nearest}?`);
  }
  return problem(files.join(' '), 'No process is named behind the material.', `Name one of: ${told.join(', ')}.`);
}

function findMaterial(name: string): Result<FoundMetal, CallProblem> {
  const row = materialNamed<MaterialRow>(name);
  const found = findMetal(name, row?.cuttingGroup, row?.cuttingMetal);
  if (found) return ok(found);
  const nearest = nearestName(
    name.toLowerCase(),
    materials.flatMap((material) => [material.name, ...material.also]).map((known) => known.toLowerCase()),
  );
  const hint = nearest === undefined ? `Known metals: ${cuttingMetals.join(', ')}.` : `Did you mean ${nearest}?`;
  return problem(name, 'Nothing is known of how this is cut.', hint);
}

const examples = 'Write it as 25, 0.5 in, 1/2", or of a drill No 7.';
/** No tool of a workshop and no work in it is larger; a larger number has lost its point or its unit. */
const LARGEST_MM = 10_000;

function readSize(
  written: string,
  process: Process,
): Result<Pick<AdviceWanted, 'diameterMm' | 'pitchMm'>, CallProblem> {
  const text = written.trim();
  if (process === 'saw') {
    if (text === '') return ok({ diameterMm: undefined, pitchMm: undefined });
    return problem(text, 'A saw has no diameter here.', 'Leave it out: speed MATERIAL saw.');
  }
  if (text === '') return problem(process, 'The diameter is missing.', `It stands behind the process. ${examples}`);
  if (process === 'tap') {
    const thread = parseThread(text);
    if (thread?.ok) return ok({ diameterMm: thread.value.majorMm, pitchMm: thread.value.pitchMm });
    const sentence = (thread && describeProblem(thread.error)) ?? 'A tap is named by its thread.';
    return problem(text, sentence, 'Write it as M8, M8x1 or 1/4-20.');
  }
  const named = process === 'drill' || process === 'ream' ? drillNamed(text) : undefined;
  if (named && 'drill' in named) return ok({ diameterMm: named.drill.diameterMm, pitchMm: undefined });
  const length = readLength(text, text);
  return length.ok ? ok({ diameterMm: length.value, pitchMm: undefined }) : length;
}

function readLength(place: string, written: string | boolean | undefined): Result<number | undefined, CallProblem> {
  if (typeof written !== 'string') return ok(undefined);
  const at = place === written ? written : `${place} ${written}`;
  const read = parseWritten(written, { kind: 'length', lengthUnit: 'mm' });
  if (!read.ok) return problem(at, describeProblem(read.error) ?? 'This is no length.', examples);
  if (read.value.is !== 'quantity') return problem(at, 'This is no plain length.', examples);
  const { value } = read.value;
  if (!(value > 0)) return problem(at, 'It has to be above nought.', examples);
  if (value > LARGEST_MM)
    return problem(at, 'This is larger than anything cut in a workshop.', 'Check its point and its unit.');
  return ok(value);
}

function readEdge(written: string | boolean | undefined): Result<Edge, CallProblem> {
  if (typeof written !== 'string') return ok('HSS');
  const key = written
    .trim()
    .toLowerCase()
    .replace(/[-_ ]+/g, ' ');
  const edge = edges.find((one) => one.toLowerCase() === key);
  return edge
    ? ok(edge)
    : problem(`--edge ${written}`, 'There is no such edge here.', 'Write HSS, carbide or carbon-steel.');
}

function readRange(written: string | boolean | undefined): Result<MachineRange, CallProblem> {
  if (typeof written !== 'string') return ok({ slowest: undefined, fastest: undefined });
  const read = /^\s*(\d{1,6}(?:\.\d+)?)?\s*(?:-|–|\.\.|to)\s*(\d{1,6}(?:\.\d+)?)?\s*$/.exec(written);
  const [slowest, fastest] = [read?.[1], read?.[2]].map((text) => (Number(text) > 0 ? Number(text) : undefined));
  const place = `--rpm-range ${written}`;
  if (!read || (slowest === undefined && fastest === undefined)) {
    return problem(place, 'This is no range of turns.', 'Write the slowest and the fastest: 70-1200.');
  }
  if (slowest !== undefined && fastest !== undefined && slowest > fastest) {
    return problem(place, 'The slowest is faster than the fastest.', 'Write the slowest first: 70-1200.');
  }
  return ok({ slowest, fastest });
}

function readTeeth(written: string | boolean | undefined): Result<number, CallProblem> {
  if (typeof written !== 'string') return ok(4);
  const teeth = /^\d{1,3}$/.test(written.trim()) ? Number(written) : 0;
  return teeth > 0 && teeth <= 200
    ? ok(teeth)
    : problem(`--teeth ${written}`, 'This is no number of teeth.', 'Write a whole number, such as 4.');
}

const rounded = (value: number): string => formatNumber(value, value < 1 ? 3 : value < 10 ? 2 : value < 100 ? 1 : 0);
const feet = (speedMMin: number): string => formatNumber(speedMMin / 0.3048, 0);
const inches = (mm: number): string => formatNumber(toInches(mm), 4);
const sourceOf = ({ source, status }: { readonly source: string; readonly status: string }): string =>
  source.includes(status) ? `${source}.` : `${source} (${status}).`;

const fromWords = {
  chosen: 'as chosen',
  table: '',
  machine: 'as the machine can',
  thread: 'led by the thread',
} as const;

function words(output: SpeedOutput, ink: Paint): string {
  const { metal, metalBy, process, edge, diameterMm, pitchMm, speed: run, rpm, feed, load, care, warnings } = output;
  const isStroke = process === 'shape' || process === 'plane';
  const across =
    diameterMm === undefined
      ? ''
      : `, ${rounded(diameterMm)} mm (${inches(diameterMm)} in)${isStroke ? ' of stroke' : ''}`;
  const pitch = pitchMm === undefined ? '' : `, pitch ${rounded(pitchMm)} mm`;
  const taken = metalBy === 'group' ? 'only its group is known; taken as' : 'taken as';
  const row = (name: string, begin: string, from: string, least: string, most: string, other: string) => [
    name,
    begin,
    least === '' ? '' : least === most ? least : `${least} to ${most}`,
    other,
    from,
  ];
  const rows = [
    row(
      process === 'saw' ? 'band' : 'speed',
      `${rounded(run.start.value)} m/min`,
      fromWords[run.start.from],
      run.table ? rounded(run.table.least) : '',
      run.table ? rounded(run.table.most) : '',
      `${feet(run.start.value)} ft/min`,
    ),
    ...(rpm
      ? [
          row(
            isStroke ? 'strokes' : 'turns',
            `${formatNumber(rpm.start.value, 0)} ${isStroke ? '/min' : 'rpm'}`,
            fromWords[rpm.start.from],
            rpm.table ? formatNumber(rpm.table.least, 0) : '',
            rpm.table ? formatNumber(rpm.table.most, 0) : '',
            '',
          ),
        ]
      : []),
    ...(feed
      ? [
          row(
            `feed a ${feed.per}`,
            `${rounded(feed.start.value)} mm`,
            fromWords[feed.start.from],
            feed.table ? rounded(feed.table.least) : '',
            feed.table ? rounded(feed.table.most) : '',
            `${inches(feed.start.value)} in`,
          ),
        ]
      : []),
  ];
  const lines = [
    ink.bold(`${process} ${output.material}, ${edge}${across}${pitch}`),
    indented(`${taken} ${metal}: ${cuttingMetalRows[metal].what}`, 2),
    '',
    table([{ head: '' }, { head: 'begin with' }, { head: 'table' }, { head: 'inch' }, { head: '' }], rows),
  ];
  if (feed?.speedMmMin !== undefined) {
    lines.push('', `  feeds ${rounded(feed.speedMmMin)} mm/min (${rounded(toInches(feed.speedMmMin))} in/min)`);
  }
  if (load) lines.push('', ...loadWords(load));
  for (const warning of warnings) lines.push('', ink.caution(indented(warning, 2)));
  if (care !== undefined) lines.push('', indented(`${care} (common practice)`, 2));
  lines.push('', ...sourceLines(output).map((line) => ink.quiet(indented(line, 2))));
  return `${lines.join('\n')}\n`;
}

function loadWords(load: NonNullable<SpeedOutput['load']>): readonly string[] {
  const { depthMm, breadthMm, forceN, torqueNm, powerKw, motorKw, efficiency } = load;
  const cut = depthMm === undefined ? '' : ` at ${rounded(depthMm)} mm deep`;
  const broad = breadthMm === undefined ? '' : ` and ${rounded(breadthMm)} mm broad`;
  const force = forceN === undefined ? '' : `, force ${formatNumber(forceN, 0)} N`;
  const torque = torqueNm === undefined ? '' : `, torque ${rounded(torqueNm)} Nm`;
  return [
    indented(
      `power${cut}${broad}: ${rounded(powerKw)} kW at the edge${force}${torque}; ${rounded(motorKw)} kW of the motor, of which ${formatNumber(efficiency * 100, 0)} % reaches the edge`,
      2,
    ),
  ];
}

function sourceLines({ speed: run, feed, load }: SpeedOutput): readonly string[] {
  const lines: string[] = [];
  if (run.table) lines.push(`Speed: ${sourceOf(run.table)}`);
  if (feed?.table) lines.push(`Feed: ${sourceOf(feed.table)}`);
  if (load) lines.push(`Power: ${sourceOf(load)} Of the motor: common practice, no source.`);
  return lines;
}
