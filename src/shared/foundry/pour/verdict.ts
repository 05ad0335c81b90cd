import type { BodyId, MachineId, PartId, PatternId } from '../../base/ids.ts';
import type { Direction } from '../../build/casting.ts';
import type { Figure } from '../figure.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';

/** What is judged of a pour; stable, it stands in finding keys. */
export const pourVerdictCodes = [
  /** The crucible does not hold what one mould takes. */
  'crucible-capacity',
  /** The furnace takes the crucible in, and reaches the temperature. */
  'crucible-in-furnace',
  'furnace-temperature',
  /** What was put into the crucible, by the journal, is what the pour needs. */
  'metal-charged',
  /** The temperature lies in the band. */
  'temperature-band',
  /** The thinnest section runs full: of the alloy and of the process. */
  'section-thin',
  'fill-time',
  'gate-speed',
  /** The level in the cup stands over the top of the casting. */
  'head',
  'riser-freezes-late',
  'riser-holds-enough',
  /** A thick place that is cut off before it freezes, without a riser. */
  'hot-spot',
  /** Metal that flows round an insert stays hot enough. */
  'insert-cold',
  'cope-lift',
  'flask-cover',
  /** The coating of a foam pattern is dry. */
  'coating-dry',
] as const;
export type PourVerdictCode = (typeof pourVerdictCodes)[number];

export type PourState = 'clear' | 'caution' | 'stop' | 'unknown';

/** What would turn a verdict to clear, by itself. */
export type Way =
  /** `cold`: what foam stands; hotter than that, it can only be laid in just before the metal comes. */
  | { readonly is: 'preheat'; readonly insert: number; readonly toC: number; readonly overFoam: boolean }
  /** Within the band. */
  | { readonly is: 'hotter'; readonly toC: number }
  /** Neither alone does it within what can be done; the hottest of the band and this preheat together do. */
  | {
      readonly is: 'preheat and hotter';
      readonly insert: number;
      readonly preheatC: number;
      readonly toC: number;
      readonly overFoam: boolean;
    }
  | { readonly is: 'cooler'; readonly toC: number }
  | { readonly is: 'turn over'; readonly part: PartId; readonly up: Direction }
  /** Its metal would cool the insert's share only so far: no more than this mass of insert. */
  | { readonly is: 'lighter insert'; readonly insert: number; readonly kg: number }
  /** Another machine of the shop that does. */
  | { readonly is: 'machine'; readonly machine: MachineId }
  | { readonly is: 'capacity'; readonly litres: number }
  | { readonly is: 'metal'; readonly kg: number }
  | { readonly is: 'choke'; readonly diameterMm: number }
  | { readonly is: 'gates'; readonly areaMm2: number }
  | { readonly is: 'sprue'; readonly heightMm: number }
  | { readonly is: 'riser'; readonly body: BodyId | undefined; readonly diameterMm: number; readonly heightMm: number }
  | { readonly is: 'weight'; readonly kg: number }
  | { readonly is: 'wall'; readonly mm: number };

/** What a verdict points at. */
export interface PourSubject {
  readonly part?: PartId | undefined;
  readonly body?: BodyId | undefined;
  readonly machine?: MachineId | undefined;
  readonly pattern?: PatternId | undefined;
  /** Place in the lists of the pour. */
  readonly riser?: number | undefined;
  readonly insert?: number | undefined;
}

export interface PourVerdict {
  readonly code: PourVerdictCode;
  readonly state: PourState;
  readonly about: PourSubject;
  readonly has: Figure | undefined;
  readonly needs: Figure | undefined;
  /** Nearest first; each by itself is enough. */
  readonly ways: readonly Way[];
  /** Why it cannot be told. */
  readonly unknown: readonly FoundryUnknown[];
}

interface Judged {
  readonly about?: PourSubject;
  readonly has?: Figure | undefined;
  readonly needs?: Figure | undefined;
  readonly ways?: readonly Way[];
  readonly unknown?: readonly FoundryUnknown[];
}

export const verdict = (code: PourVerdictCode, state: PourState, judged: Judged = {}): PourVerdict => ({
  code,
  state,
  about: judged.about ?? {},
  has: judged.has,
  needs: judged.needs,
  ways: state === 'clear' ? [] : (judged.ways ?? []),
  unknown: state === 'unknown' ? (judged.unknown ?? []) : [],
});
