import type { Process } from '../../../shared/build/operation.ts';
import type { Proposal } from '../../../shared/machining/cutting/conditions.ts';
import type { OperationFact, Pass } from '../../../shared/machining/route/operation-fact.ts';
import { formatNumber, formatQuantity } from '../../../shared/quantity/format.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';
import { cuttingMetalRows } from '../../../shared/tables/cutting-metals.ts';
import { roundedLength } from './rounded-length.ts';
import type { FigureWords, OperationRow } from './route-models.ts';

/** `1 h 20 min`, `12 min`, `45 s`. */
export function timeWords(minutes: number): string {
  if (minutes < 1) return `${Math.max(1, Math.round(minutes * 60))} s`;
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole < 10 ? formatNumber(minutes, 1) : whole} min`;
  const rest = whole % 60;
  return rest === 0 ? `${Math.floor(whole / 60)} h` : `${Math.floor(whole / 60)} h ${rest} min`;
}

const perWords: Readonly<Partial<Record<Process, string>>> = { mill: 'tooth', shape: 'stroke', plane: 'stroke' };
const strokes: ReadonlySet<Process> = new Set(['shape', 'plane']);
/** Three figures are more than a shop can set. */
const rounded = (value: number): string => formatNumber(value, value < 1 ? 3 : value < 10 ? 2 : value < 100 ? 1 : 0);

const FEET_PER_M = 1 / 0.3048;

export const speedWords = (mPerMin: number, unit: LengthUnit): string =>
  unit === 'in' ? `${formatNumber(mPerMin * FEET_PER_M, 0)} ft/min` : `${rounded(mPerMin)} m/min`;

function fromWords({ from, row }: Proposal): string {
  switch (from) {
    case 'chosen':
      return 'as chosen';
    case 'machine':
      return row === undefined ? 'as the machine can' : `as the machine can; ${row.source}`;
    case 'thread':
      return 'led by the thread';
    case 'table':
      return row?.source ?? '';
  }
}

type Cells = Pick<
  OperationRow,
  'tool' | 'toolMore' | 'speed' | 'rpm' | 'feed' | 'cuts' | 'power' | 'powerOf' | 'time' | 'figures' | 'proposed'
>;

/** All figures of an operation in words. */
export function cellsOf(fact: OperationFact, motorKw: number | undefined, unit: LengthUnit): Cells {
  const { record, passes, minutes } = fact;
  const { process } = record;
  // Feeds and last cuts are so fine that hundredths would not tell them apart.
  const length = (mm: number) => (mm < 0.1 ? formatQuantity(mm, 'length', { unit }) : roundedLength(mm, unit));
  const per = perWords[process] ?? 'turn';
  const first = passes[0];
  const turns = (rpm: number) => `${formatNumber(rpm, 0)} ${strokes.has(process) ? 'strokes/min' : 'rpm'}`;
  const power = passes.reduce<number | undefined>(
    (most, { load }) => (load === undefined ? most : Math.max(most ?? 0, load.motorKw)),
    undefined,
  );
  const figures: FigureWords[] = [];
  const add = (name: string, value: string | undefined, from: string) => {
    if (value !== undefined) figures.push({ name, value, from });
  };
  for (const pass of passes) {
    const of = passes.length === 1 ? '' : pass.kind === 'rough' ? ', roughing' : ', to size';
    if (pass.speed) add(`Speed${of}`, speedWords(pass.speed.value, unit), fromWords(pass.speed));
    if (pass.rpm) add(strokes.has(process) ? `Strokes${of}` : `Turns${of}`, turns(pass.rpm.value), '');
    if (pass.feed) add(`Feed${of}`, `${length(pass.feed.value)} a ${per}`, fromWords(pass.feed));
    if (pass.depth) add(`Depth${of}`, length(pass.depth.value), fromWords(pass.depth));
    if (pass.load?.forceN !== undefined) add(`Force${of}`, `${formatNumber(pass.load.forceN, 0)} N`, 'Kienzle’s law');
    if (pass.load?.torqueNm !== undefined) add(`Torque${of}`, `${rounded(pass.load.torqueNm)} Nm`, '');
    if (pass.load !== undefined) add(`Motor${of}`, `${rounded(pass.load.motorKw)} kW`, 'with what the drive loses');
  }
  if (fact.metal !== undefined) {
    const row = cuttingMetalRows[fact.metal.metal];
    add('Cut as', fact.metal.metal, row.what);
    if (row.care !== undefined) add('Mind', row.care, 'common practice, no source');
  }
  const last = passes.at(-1);
  return {
    tool: toolWords(fact, length),
    toolMore: toolMoreWords(fact, length),
    speed: first?.speed && speedWords(first.speed.value, unit),
    rpm: first?.rpm && turns(first.rpm.value),
    feed: first?.feed && `${length(first.feed.value)}/${per}`,
    cuts: cutsWords(passes, length),
    power: power === undefined ? undefined : `${powerWords(power)} kW`,
    powerOf: power === undefined || motorKw === undefined ? undefined : `of ${powerWords(motorKw)} kW`,
    time: minutes === undefined ? undefined : timeWords(minutes),
    figures,
    proposed: {
      ...(first?.speed && { speed: speedWords(first.speed.value, unit) }),
      ...(first?.rpm && { rpm: turns(first.rpm.value) }),
      ...(first?.feed && { feed: `${length(first.feed.value)}/${per}` }),
      ...(last?.depth && { depth: length((first?.depth ?? last.depth).value) }),
      ...(minutes !== undefined && { minutes: timeWords(minutes) }),
    },
  };
}

function toolWords({ read }: OperationFact, length: (mm: number) => string): string {
  const { edge, diameterMm } = read.tool;
  return diameterMm === undefined ? edge : `${edge} ø ${length(diameterMm)}`;
}

function toolMoreWords({ record, read }: OperationFact, length: (mm: number) => string): string {
  const { overhangMm, teeth } = read.tool;
  const words: string[] = [];
  if (overhangMm !== undefined) words.push(`${length(overhangMm)} out`);
  if (teeth > 1 && record.process === 'mill') words.push(`${teeth} teeth`);
  return words.join(', ');
}

const powerWords = (kw: number): string => formatNumber(kw, 2);

function cutsWords(passes: readonly Pass[], length: (mm: number) => string): string | undefined {
  const words = passes.flatMap(({ count, depth }) =>
    depth === undefined ? [] : [`${count === undefined ? '' : `${count}×`}${length(depth.value)}`],
  );
  return words.length === 0 ? undefined : words.join(', ');
}
