import { ok } from '../../../shared/base/result.ts';
import { findingWords } from '../../../shared/check/words.ts';
import type { Works } from '../../../shared/check/works.ts';
import type { Verdict } from '../../../shared/machining/setup-check.ts';
import type { SetupFact } from '../../../shared/machining/setups/setup-fact.ts';
import { formatNumber, formatQuantity } from '../../../shared/quantity/format.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';
import { findSetup } from '../find-named.ts';
import { indented, type Paint, paint, table } from '../layout.ts';
import { carrierOf, type SetupOutput, setupOutput } from '../output/setup-output.ts';
import { readBuild } from '../read-input.ts';
import { problem, type Verb } from '../verb.ts';
import { worksOf } from '../works-of.ts';

export const setup: Verb = {
  name: 'setup',
  usage: 'FILE SETUP [PART] [--json]',
  summary: 'swept profile, clearances and balance of one set-up',
  help: `Reads a build and says of one set-up (by name or id; with the part where two
parts have a set-up of that name) how far the work reaches from the line that it
turns about, what is left at the bed, the saddle, the tailstock and everything
else that it must pass, at the worst of its limits too, what carries it and what
would mend it, and how far it is out of balance.
Exit status: 0 nothing hits, 1 something does, or it cannot be judged.

Radii are never told smaller than they are. Figures of machines, and the rules
of thumb for grip, balance and counterweights, are no more than where to begin:
turn the work round by hand before the spindle runs, and follow the machine's
own manual.

  --json   the same as JSON (resources/schema/setup-output.schema.json)`,
  options: { json: { type: 'boolean' } },
  words: [2, 3],

  async run({ values, files: [file = '', name = '', partName] }, surroundings) {
    const read = await readBuild(file, surroundings);
    if (!read.ok) return read;
    const works = await worksOf(read.value.records);
    const found = findSetup(works.build, name, partName);
    if (!found.ok) return found;
    const { part, setup: record } = found.value;
    const facts = works.factsOf(part.id);
    const fact = facts?.setups.find(({ check }) => check.setup.id === record.id);
    if (!facts || !fact) return problem(name, 'Nothing is said of this set-up.', 'Check the build.');
    const output = setupOutput(works, facts, fact, record);
    const { verdicts, unknown } = fact.check;
    const stops = unknown.length > 0 || verdicts.some(({ state }) => state === 'hits');
    const text = values.json
      ? `${JSON.stringify(output, undefined, 2)}\n`
      : words(output, works, fact, facts.settings.lengthUnit, paint(surroundings.colour));
    return ok({ text, status: stops ? 1 : 0 });
  },
};

/** The usual cautions of work that turns; the machine's manual and the rules of the shop come before them. */
const CAUTION =
  'Before the spindle runs: guards on, key out of the chuck, work and counterweight tight, turned once round by hand, speed at its slowest, eyes behind glasses. The manual of the machine and the rules of your shop come first.';

/** Lengths of a set-up are told to hundredths of a millimetre. */
const short = (mm: number, unit: LengthUnit): string =>
  formatQuantity(mm, 'length', { unit, decimals: unit === 'mm' ? 2 : 3, firm: true });

function words(output: SetupOutput, works: Works, fact: SetupFact, unit: LengthUnit, ink: Paint): string {
  const { machine, holding, axis, part, setup: named } = output;
  const on = machine ? `${holding} on ${machine.name}` : `${holding}, no machine`;
  const lines = [`${ink.bold(named.name)} (${part.name}, ${on}, along ${axis})`, ''];
  if (output.unknown.length > 0) {
    const what = output.unknown.map((one) => one.words).join('; ');
    lines.push(ink.stop('Cannot be judged'), indented(`Not known: ${what}. Nothing is guessed in its place.`, 2), '');
  }
  if (output.profile && output.profile.length > 0) lines.push(...profileLines(output.profile, unit, ink));
  if (fact.check.verdicts.length > 0) lines.push(...verdictLines(fact, unit, ink));
  lines.push(...mendLines(output, ink), ...balanceLines(output, unit, ink), ...findingLines(output, works, unit, ink));
  if (output.balance) lines.push(indented(CAUTION, 0));
  return `${lines.join('\n').trimEnd()}\n`;
}

/** Steps that differ by less than this are told as one, mm. */
const STEP_MM = 0.05;

function profileLines(profile: NonNullable<SetupOutput['profile']>, unit: LengthUnit, ink: Paint): readonly string[] {
  const steps: { from: number; to: number; most: number; carriedBy: string }[] = [];
  for (const { fromMm, toMm, mostMm, carriedBy } of profile) {
    const last = steps.at(-1);
    const carrier = carriedBy?.name ?? '';
    if (last && last.carriedBy === carrier && Math.abs(last.most - mostMm) < STEP_MM) {
      last.to = toMm;
      last.most = Math.max(last.most, mostMm);
    } else steps.push({ from: fromMm, to: toMm, most: mostMm, carriedBy: carrier });
  }
  const shown = steps.length > MOST_STEPS ? condensed(steps) : steps;
  const rows = shown.map(({ from, to, most, carriedBy }) => [
    short(from, unit),
    short(to, unit),
    most === 0 ? 'nothing' : short(most, unit),
    carriedBy,
  ]);
  const columns = ['from', 'to', 'radius', 'carried by'].map((head) => ({ head }));
  return [ink.bold('Swept about the line'), '', table(columns, rows), ''];
}

/** More steps than this say no more to an eye. */
const MOST_STEPS = 30;

/** Neighbours of one carrier put together, told by the greatest of them: a slope then is one step. */
function condensed<S extends { from: number; to: number; most: number; carriedBy: string }>(steps: readonly S[]): S[] {
  const all: S[] = [];
  for (const step of steps) {
    const last = all.at(-1);
    if (last && last.carriedBy === step.carriedBy) {
      last.to = step.to;
      last.most = Math.max(last.most, step.most);
    } else all.push({ ...step });
  }
  return all;
}

function verdictLines(fact: SetupFact, unit: LengthUnit, ink: Paint): readonly string[] {
  const rows = fact.check.verdicts.map((verdict) => verdictCells(verdict, fact, unit));
  const columns = ['what', 'state', 'left', 'at worst', 'has', 'needs', 'carried by'].map((head) => ({ head }));
  return [ink.bold('Clearances'), '', table(columns, rows), ''];
}

function verdictCells(verdict: Verdict, fact: SetupFact, unit: LengthUnit): readonly string[] {
  const { operation, state, margin, has, needs, band } = verdict;
  const cut = operation === undefined ? '' : ` (${fact.names[operation] ?? operation})`;
  const length = (mm: number | undefined) => (mm === undefined ? '' : short(mm, unit));
  const worst = margin === undefined ? undefined : margin + band.minus;
  return [
    `${titleOf(verdict)}${cut}`,
    state === 'unknown' ? 'not known' : state,
    length(margin),
    length(worst),
    length(has),
    length(needs),
    carrierOf(fact, verdict),
  ];
}

const titleOf = ({ kind }: Verdict): string => kind.replaceAll('-', ' ');

function mendLines({ verdicts }: SetupOutput, ink: Paint): readonly string[] {
  const lines: string[] = [];
  for (const { title, operation, state, remedies, unknown } of verdicts) {
    const head = operation ? `${title}, ${operation.name}` : title;
    if (state === 'unknown')
      lines.push(indented(`${head}: not known is ${unknown.map((one) => one.words).join('; ')}.`, 2));
    else if (remedies.length > 0) {
      lines.push(indented(`${head}: ${remedies.map((one) => one.words).join('; or ')}.`, 2));
    } else if (state === 'hits') lines.push(indented(`${head}: no single change was found that clears.`, 2));
  }
  return lines.length === 0 ? [] : [ink.bold('What would help'), '', ...lines, ''];
}

function balanceLines({ balance, balanceUnknown }: SetupOutput, unit: LengthUnit, ink: Paint): readonly string[] {
  if (!balance) {
    if (balanceUnknown.length === 0) return [];
    return [
      ink.bold('Balance'),
      '',
      indented(`Not known: ${balanceUnknown.map((one) => one.words).join('; ')}.`, 2),
      '',
    ];
  }
  const { massKg, eccentricityMm, directionDeg, imbalanceKgMm, highestRpm } = balance;
  const rows = [
    ['mass', formatQuantity(massKg, 'mass', { unit })],
    ['out of balance by', short(eccentricityMm, unit)],
  ];
  if (highestRpm !== undefined) {
    rows.push(
      ['towards', formatQuantity(directionDeg, 'angle', { unit, decimals: 0 })],
      ['imbalance', `${formatNumber(imbalanceKgMm, 2)} kg mm`],
      ['no faster than', `${Math.floor(highestRpm)} rpm (common practice, no source)`],
    );
  }
  const { counterweightKg, counterweightRadiusMm } = balance;
  if (counterweightKg !== undefined && counterweightRadiusMm !== undefined && highestRpm !== undefined) {
    const weight = formatQuantity(counterweightKg, 'mass', { unit });
    rows.push(['counterweight', `${weight} at ${short(counterweightRadiusMm, unit)}, opposite`]);
  }
  return [ink.bold('Balance'), '', table([{ head: 'figure' }, { head: 'value' }], rows), ''];
}

function findingLines({ findings }: SetupOutput, works: Works, unit: LengthUnit, ink: Paint): readonly string[] {
  const keys = new Set(findings);
  const open = works.findings().filter(({ key, accepted }) => keys.has(key) && !accepted);
  if (open.length === 0) return [];
  const lines = [ink.bold('Findings'), ''];
  for (const finding of open) {
    const { title, sentence, remedy } = findingWords(finding, unit);
    lines.push(`  ${finding.severity}: ${title}`, indented(sentence, 4), indented(remedy, 4), '');
  }
  return lines;
}
