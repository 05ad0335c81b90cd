import { z } from 'zod';
import { recordOf } from '../../../shared/build/look-up.ts';
import type { Build } from '../../../shared/build/records.ts';
import type { Setup } from '../../../shared/build/setup.ts';
import { carrierWords, remedyWords, type SetupFacts, unknownWords } from '../../../shared/check/setup-sentences.ts';
import type { Works } from '../../../shared/check/works.ts';
import { type Piece, verdictKinds } from '../../../shared/machining/setup-check.ts';
import type { SetupFact } from '../../../shared/machining/setups/setup-fact.ts';
import { verdictTitles } from '../../../shared/machining/verdict-titles.ts';

const namedSchema = z.strictObject({ id: z.string(), name: z.string() });
const unknownSchema = z.strictObject({ is: z.string(), words: z.string() });

const verdictSchema = z.strictObject({
  kind: z.enum(verdictKinds),
  title: z.string(),
  state: z.enum(['clears', 'at the limit', 'hits', 'unknown']),
  operation: namedSchema
    .optional()
    .describe('The cut that asks for it; absent for what holds for the set-up as a whole.'),
  marginMm: z.number().optional().describe('What is there less what is needed; absent when unknown.'),
  hasMm: z.number().optional(),
  needsMm: z.number().optional(),
  worstMm: z.number().optional().describe('The margin at the worst of the limits.'),
  bestMm: z.number().optional(),
  atMm: z.number().optional().describe('Where along the line it is worst, from the datum of the part.'),
  carriedBy: namedSchema.optional().describe('Body, or fixture (its number), that carries it.'),
  shares: z
    .array(
      z.strictObject({
        dimension: z.string(),
        name: z.string(),
        sensitivity: z.number().describe('What the margin gains for each mm (or degree) more.'),
        minusMm: z.number(),
        plusMm: z.number(),
      }),
    )
    .describe('The dimension that carries most comes first.'),
  unknown: z.array(unknownSchema),
  remedies: z.array(z.strictObject({ is: z.string(), words: z.string() })).describe('The nearest first.'),
});

/** What `setup --json` prints. */
export const setupOutputSchema = z
  .strictObject({
    format: z.literal('waywright-setup'),
    version: z.literal(1),
    setup: namedSchema,
    part: namedSchema,
    machine: namedSchema.optional(),
    holding: z.string(),
    axis: z.enum(['X', 'Y', 'Z']).describe('Of the line that it turns about, or moves along.'),
    unknown: z.array(unknownSchema).describe('What keeps all of it from being judged.'),
    extentMm: z.tuple([z.number(), z.number()]).optional().describe('Where the work begins and ends along the line.'),
    profile: z
      .array(
        z.strictObject({
          fromMm: z.number(),
          toMm: z.number(),
          mostMm: z.number().describe('It reaches nowhere farther from the line than this.'),
          leastMm: z.number().describe('It reaches at least so far.'),
          carriedBy: namedSchema.optional(),
        }),
      )
      .optional(),
    verdicts: z.array(verdictSchema),
    balance: z
      .strictObject({
        massKg: z.number(),
        eccentricityMm: z.number(),
        directionDeg: z.number(),
        imbalanceKgMm: z.number(),
        highestRpm: z.number().optional().describe('Absent when it is in balance.'),
        counterweightKg: z.number().optional(),
        counterweightRadiusMm: z.number().optional(),
      })
      .optional(),
    balanceUnknown: z.array(unknownSchema),
    findings: z.array(z.string()).describe('Keys of the findings about it, as `check` gives them.'),
  })
  .meta({ title: 'One set-up of a Waywright build' });
export type SetupOutput = Readonly<z.infer<typeof setupOutputSchema>>;

const opt = <K extends string, V>(key: K, value: V | undefined) =>
  (value === undefined ? {} : { [key]: value }) as Partial<Record<K, V>>;

export function setupOutput(works: Works, facts: SetupFacts, fact: SetupFact, setup: Setup): SetupOutput {
  const { build } = works;
  const { check } = fact;
  const unit = facts.settings.lengthUnit;
  const unknown = (list: typeof check.unknown) => list.map((one) => ({ is: one.is, words: unknownWords(one, fact) }));
  const piece = (one: Piece | undefined) => one && pieceOutput(build, setup, one);
  const { balance, profile } = check;
  return {
    format: 'waywright-setup',
    version: 1,
    setup: { id: setup.id, name: setup.name },
    part: { id: facts.part.id, name: facts.part.name },
    ...opt('machine', fact.machine && { id: fact.machine.id, name: fact.machine.name }),
    holding: setup.holding.as,
    axis: setup.line.axis,
    unknown: unknown(check.unknown),
    ...opt('extentMm', check.extent && ([...check.extent] as [number, number])),
    ...opt(
      'profile',
      profile &&
        Array.from(profile.most, (mostMm, i) => ({
          fromMm: profile.edges[i]!,
          toMm: profile.edges[i + 1]!,
          mostMm,
          leastMm: profile.least[i]!,
          ...opt('carriedBy', piece(profile.pieces[profile.by[i]!])),
        })),
    ),
    verdicts: check.verdicts.map((verdict) => {
      const { kind, state, operation, margin, has, needs, band, at, carriedBy, shares, remedies } = verdict;
      const isKnown = margin !== undefined;
      return {
        kind,
        title: verdictTitles[kind],
        state,
        ...opt('operation', operation && { id: operation, name: fact.names[operation] ?? operation }),
        ...opt('marginMm', margin),
        ...opt('hasMm', has),
        ...opt('needsMm', needs),
        ...opt('worstMm', isKnown ? margin + band.minus : undefined),
        ...opt('bestMm', isKnown ? margin + band.plus : undefined),
        ...opt('atMm', at),
        ...opt('carriedBy', piece(carriedBy)),
        shares: shares.map(({ dimension, sensitivity, minus, plus }) => ({
          dimension,
          name: recordOf(build, 'dimension', dimension)?.name ?? dimension,
          sensitivity,
          minusMm: minus,
          plusMm: plus,
        })),
        unknown: unknown(verdict.unknown),
        remedies: remedies.map((remedy) => ({ is: remedy.is, words: remedyWords(remedy, fact, unit) })),
      };
    }),
    ...opt('balance', balance && balanceOutput(balance)),
    balanceUnknown: unknown(check.balanceUnknown),
    findings: works
      .findingsOf(facts.part.id)
      .filter(({ at }) => at.includes(setup.id))
      .map(({ key }) => key),
  };
}

function balanceOutput(balance: NonNullable<SetupFact['check']['balance']>): NonNullable<SetupOutput['balance']> {
  const { massKg, eccentricityMm, directionDeg, imbalanceKgMm, highestRpm } = balance;
  return {
    massKg,
    eccentricityMm,
    directionDeg,
    imbalanceKgMm,
    // JSON has no word for infinity.
    ...opt('highestRpm', Number.isFinite(highestRpm) ? highestRpm : undefined),
    ...opt('counterweightKg', balance.counterweightKg),
    ...opt('counterweightRadiusMm', balance.counterweightRadiusMm),
  };
}

function pieceOutput(build: Build, setup: Setup, piece: Piece): { readonly id: string; readonly name: string } {
  if (piece.is === 'fixture')
    return { id: String(piece.index), name: setup.fixtures[piece.index]?.name ?? 'a fixture' };
  return { id: piece.body, name: recordOf(build, 'body', piece.body)?.name ?? piece.body };
}

/** What carries a verdict, as a table has room for it. */
export const carrierOf = (fact: SetupFact, verdict: SetupFact['check']['verdicts'][number]): string =>
  carrierWords(fact, verdict).replace(/^, carried by /, '');
