import type { Pour } from '../build/pour.ts';
import { type Cause, type Defect, defects } from './defects/catalogue.ts';
import type { Evidence, Weighed } from './defects/causes.ts';
import { checkPour, type PourCheck } from './pour-check.ts';
import type { PourInput } from './pour-input.ts';

/** A cause with what the pour's own figures say to it. */
export interface WeighedCause {
  readonly cause: Cause;
  /** 0 against it … 1 strongly for it; undefined: no figure of this pour speaks of it. */
  readonly weight: number | undefined;
  /** A clause without a capital and a stop. */
  readonly because: string | undefined;
}

export interface WeighedDefect {
  readonly defect: Defect;
  /** Most likely first; those of which no figure speaks after those that speak for themselves. */
  readonly causes: readonly WeighedCause[];
  /** The likely ones in one sentence: `Poured 25 K under the band, and 0.46 kg of cold steel in the boss.` */
  readonly sentence: string | undefined;
  /** One thing to change next time: what meets the most likely cause. */
  readonly change: string | undefined;
}

/** A cause counts as likely from here on; common practice, no source. */
export const LIKELY = 0.4;
/** Where causes of which nothing is known stand among the weighed. */
const UNKNOWN_RANK = 0.25;

/** The pour as its journal says it was done: temperatures, shop and inserts as measured where they were. */
export function asPoured(pour: Pour): Pour {
  const { journal } = pour;
  if (!journal) return pour;
  const or = (done: string, planned: string): string => (done.trim() === '' ? planned : done);
  return {
    ...pour,
    temperature: or(journal.temperature, pour.temperature),
    ambient: or(journal.ambient, pour.ambient),
    inserts: pour.inserts.map((insert) => ({ ...insert, preheat: or(journal.insertTemperature, insert.preheat) })),
  };
}

/** The pour worked out as it was done. */
export const checkAsPoured = (input: PourInput): PourCheck => checkPour({ ...input, pour: asPoured(input.pour) });

/** Likely causes of a defect, weighed by the figures of the pour as it was done. */
export function weighDefect(defect: Defect, evidence: Evidence): WeighedDefect {
  const causes = defect.causes
    .map((cause): WeighedCause => {
      const weighed: Weighed | undefined = cause.weigh?.(evidence);
      return { cause, weight: weighed?.weight, because: weighed?.because };
    })
    .map((one, place) => ({ one, place }))
    .sort((a, b) => rank(b.one) - rank(a.one) || a.place - b.place)
    .map(({ one }) => one);
  const likely = causes.filter(({ weight }) => weight !== undefined && weight >= LIKELY);
  const clauses = [...new Set(likely.map(({ because }) => because!))].slice(0, 3);
  return {
    defect,
    causes,
    sentence: clauses.length === 0 ? undefined : `${capital(joined(clauses))}.`,
    change: causes[0]?.cause.change,
  };
}

/** Those that the journal names, in its order; ids of other catalogues are passed over. */
export const weighJournal = (pour: Pour, evidence: Evidence): readonly WeighedDefect[] =>
  (pour.journal?.defects ?? []).flatMap((id) => {
    const defect = defects.find((one) => one.id === id);
    return defect ? [weighDefect(defect, evidence)] : [];
  });

/** What may come of the pour as it is planned or was done: defects with a likely cause, most likely first. */
export function likelyDefects(evidence: Evidence): readonly WeighedDefect[] {
  const family = evidence.check.family;
  return defects
    .filter(({ families }) => families.length === 0 || (family !== undefined && families.includes(family)))
    .map((defect) => weighDefect(defect, evidence))
    .filter(({ sentence }) => sentence !== undefined)
    .sort((a, b) => rank(b.causes[0]!) - rank(a.causes[0]!));
}

const rank = ({ weight }: WeighedCause): number => weight ?? UNKNOWN_RANK;

const joined = (clauses: readonly string[]): string =>
  clauses.length < 2 ? clauses.join('') : `${clauses.slice(0, -1).join(', ')}, and ${clauses.at(-1)}`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
