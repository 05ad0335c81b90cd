import type { HoldingWay } from '../build/setup.ts';
import type { Piece, Remedy, Verdict, VerdictKind } from '../machining/setup-check.ts';
import type { SetupFact } from '../machining/setups/setup-fact.ts';
import type { Unknown } from '../plan/unknown.ts';
import { formatQuantity } from '../quantity/format.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import { listed } from './listing.ts';
import type { PartFacts, Said } from './rule.ts';

/** What findings about set-ups are put together from. */
export type SetupFacts = Pick<PartFacts, 'settings' | 'part' | 'stations' | 'axes' | 'setups'>;
export const setupNeeds = ['settings', 'part', 'stations', 'axes', 'setups'] as const;

/** Lengths of a set-up are told to hundredths of a millimetre. */
const STEP_MM = 0.01;
const rounded = (mm: number): number => Math.round(mm / STEP_MM) * STEP_MM;
/** What is wanting is never told as less than it is. */
const roundedUp = (mm: number): number => Math.ceil(mm / STEP_MM - 1e-6) * STEP_MM;

const length = (mm: number, unit: LengthUnit): string =>
  formatQuantity(rounded(mm), 'length', { unit, decimals: unit === 'in' ? 3 : 2 });

/** Fields of a set-up, and of a cut done in it, as their forms call them. */
const fieldWords: readonly (readonly [begins: string, words: string])[] = [
  ['line', 'the line that it turns about or moves along'],
  ['allowance', 'the stock on it'],
  ['holding/ends', 'where the jaws close'],
  ['holding/diameter', 'the diameter that is held'],
  ['holding/seat', 'the place that sits against plate or table'],
  ['holding/at', 'where the steady stands'],
  ['holding/depth', 'how deep it sits in the jaws'],
  ['holding', 'a way of holding that this machine has'],
  ['fixtures', 'the size, place or mass of what is fixed to it'],
  ['cut/diameter', 'the diameter or breadth of the cut'],
  ['cut/inner', 'the inner diameter of the cut'],
  ['cut', 'where the cut begins and ends'],
  ['tool/overhang', 'how far the tool stands out'],
  ['tool/diameter', 'the diameter of the tool'],
  ['vise', 'a vise among the machines'],
  ['machine', 'a machine that work can be put into'],
  ['state', 'the mass of the part between two states'],
  ['part', 'a body of the part that stands'],
];

const fieldName = (field: string): string => fieldWords.find(([begins]) => field.startsWith(begins))?.[1] ?? field;

/** What is not known, each a clause of a list. */
export function unknownWords(unknown: Unknown, { names, figures }: SetupFact): string {
  const nameOf = (id: string): string => names[id] ?? 'something that is gone';
  switch (unknown.is) {
    case 'machine':
      return 'the machine';
    case 'line':
      return 'the line that it turns about or moves along';
    case 'figure':
      return `${lowerFirst(figures[`${unknown.machine} ${unknown.key}`] ?? unknown.key)} of ${nameOf(unknown.machine)}`;
    case 'written':
      return `${fieldName(unknown.field)}, for which “${unknown.text.trim()}” is written`;
    case 'field':
      return fieldName(unknown.field);
    case 'station':
      return `where ${nameOf(unknown.station)} stands`;
    case 'dimension':
      return `how much ${nameOf(unknown.dimension)} is`;
    case 'body':
      return `the shape of ${nameOf(unknown.body)}`;
    case 'material':
      return unknown.name.trim() === '' ? 'a material' : `the density of ${unknown.name}`;
  }
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** `41 mm above foot along X`; nothing where the verdict is of no one place. */
function placeWords(facts: SetupFacts, { check }: SetupFact, at: number | undefined): string {
  if (at === undefined) return '';
  const { axis } = check.setup.line;
  const unit = facts.settings.lengthUnit;
  const drawn = facts.axes.find((one) => one.axis === axis);
  const placed = drawn?.datum === undefined ? [] : drawn.stations.filter(({ group }) => group === 0);
  let nearest: (typeof placed)[number] | undefined;
  for (const one of placed) if (!nearest || Math.abs(one.at - at) < Math.abs(nearest.at - at)) nearest = one;
  const name = nearest && facts.stations.find(({ id }) => id === nearest.id)?.name;
  if (!nearest || name === undefined) return ` at ${length(at, unit)} along ${axis}`;
  const away = at - nearest.at;
  if (Math.abs(away) < STEP_MM / 2) return ` at ${name}`;
  return ` at ${length(Math.abs(away), unit)} ${away > 0 ? 'above' : 'below'} ${name} along ${axis}`;
}

/** `, carried by trunnion and pivot height`: the piece, and the dimension that carries most. */
export function carrierWords(fact: SetupFact, { carriedBy, shares }: Pick<Verdict, 'carriedBy' | 'shares'>): string {
  const dimension = shares[0] && fact.names[shares[0].dimension];
  const piece = carriedBy && pieceName(fact, carriedBy);
  const carriers = [piece, dimension].filter((one) => one !== undefined);
  return carriers.length === 0 ? '' : `, carried by ${carriers.join(' and ')}`;
}

function pieceName({ check, names }: SetupFact, piece: Piece): string | undefined {
  if (piece.is === 'fixture') return check.setup.fixtures[piece.index]?.name;
  const of = piece.part === check.setup.part ? '' : ` of ${names[piece.part] ?? 'another part'}`;
  return `${names[piece.body] ?? 'a body'}${of}`;
}

const holdings: Readonly<Record<HoldingWay, string>> = {
  'between centres': 'between centres',
  'three-jaw chuck': 'in the three-jaw chuck',
  'four-jaw chuck': 'in the four-jaw chuck',
  'face plate': 'on the face plate',
  steady: 'in the steady',
  vise: 'in the vise',
  'clamped to the table': 'clamped to the table',
};

export function remedyWords(remedy: Remedy, { names, kinds }: SetupFact, unit: LengthUnit): string {
  switch (remedy.is) {
    case 'dimension': {
      const show = (value: number) => formatQuantity(value, kinds[remedy.dimension] ?? 'length', { unit });
      return `make ${names[remedy.dimension] ?? 'it'} ${show(remedy.to)} instead of ${show(remedy.from)}`;
    }
    case 'machine':
      return `do it on ${names[remedy.machine] ?? 'another machine'}`;
    case 'holding':
      return `hold it ${holdings[remedy.holding.as]}`;
    case 'end-for-end':
      return 'turn it end for end';
    case 'after':
      return `set it up only after ${names[remedy.operation] ?? 'a later operation'}`;
  }
}

/** What is wanting at the worst of the limits. */
export const lackWords = ({ margin = 0, band }: Pick<Verdict, 'margin' | 'band'>, unit: LengthUnit): string =>
  length(roundedUp(Math.max(0, -(margin + band.minus))), unit);

/**
 * Ways out in one sentence, the nearest first; `otherwise` where none was found. Where a tool or the machine is at fault rather than the
 * drawing, `leads`: it comes first even so.
 */
export function waysWords(
  fact: SetupFact,
  { remedies }: Verdict,
  unit: LengthUnit,
  otherwise: string,
  leads = false,
): string {
  if (remedies.length === 0) return otherwise;
  const ways = remedies.map((remedy) => remedyWords(remedy, fact, unit));
  const text = ways.length < 3 ? ways.join(', or ') : `${ways.slice(0, -1).join(', ')}, or ${ways.at(-1)}`;
  return leads ? `${otherwise.replace(/\.$/, '')}; or ${text}.` : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** What a verdict says, for the placeholders of a rule. */
function verdictSaid<M extends string>(
  facts: SetupFacts,
  fact: SetupFact,
  verdict: Verdict,
  message: M,
  otherwise: string,
  leads: boolean,
): Said<M> {
  const { setup } = fact.check;
  const { operation, margin = 0, has = 0, needs = 0, carriedBy, shares } = verdict;
  const unit = facts.settings.lengthUnit;
  const first = shares[0]?.dimension;
  return {
    message,
    at: [
      setup.id,
      ...(operation === undefined ? [] : [operation]),
      ...(carriedBy?.is === 'body' ? [carriedBy.body] : []),
      ...(first === undefined ? [] : [first]),
    ],
    data: {
      part: facts.part.name,
      setup: setup.name,
      machine: fact.machine?.name ?? 'the machine',
      cut: operation === undefined ? '' : ` for ${fact.names[operation] ?? 'its cut'}`,
      place: placeWords(facts, fact, verdict.at),
      carrier: carrierWords(fact, verdict),
      ways: waysWords(fact, verdict, unit, otherwise, leads),
      overMm: roundedUp(Math.max(0, -margin)),
      hasMm: rounded(has),
      needsMm: rounded(needs),
    },
  };
}

/** Findings of one kind of rule: the verdicts of some kinds that hit, each under the message of its kind. */
export const hits = <K extends VerdictKind>(
  facts: SetupFacts,
  kinds: readonly K[],
  otherwise: string,
  leads = false,
): readonly Said<K>[] =>
  facts.setups.flatMap((fact) =>
    fact.check.verdicts.flatMap((verdict) => {
      const kind = kinds.find((one) => one === verdict.kind);
      return kind !== undefined && verdict.state === 'hits'
        ? [verdictSaid(facts, fact, verdict, kind, otherwise, leads)]
        : [];
    }),
  );

/** What is not known, in one list. */
export const unknownList = (unknown: readonly Unknown[], fact: SetupFact): string =>
  listed(unknown.map((one) => unknownWords(one, fact)));
