import { z } from 'zod';
import { type Alloy, type AlloyFigure, type AlloyKey, alloyKeys, alloyNamed } from '../tables/alloys.ts';
import { idSchema, nameSchema } from './fields.ts';

const celsius = z.number().min(-50).max(3_500).optional();
const heat = z.number().positive().max(50).optional();
const density = z.number().positive().max(30_000).optional();
/** Some alloys grow a little while they freeze. */
const contraction = z.number().min(-2).max(10).optional();

/** Figures of one's own; what is left out is taken from the table. */
const figuresSchema = z.strictObject({
  solidusC: celsius,
  liquidusC: celsius,
  latentKJKg: z.number().positive().max(2_000).optional(),
  solidHeatKJKgK: heat,
  liquidHeatKJKgK: heat,
  solidDensityKgM3: density,
  liquidDensityKgM3: density,
  contractionLeast: contraction,
  contractionUsual: contraction,
  contractionMost: contraction,
  freezingShrinkage: z.number().min(-10).max(20).optional(),
  pourLeastC: celsius,
  pourMostC: celsius,
  meltLoss: z.number().min(0).max(90).optional(),
} satisfies Readonly<Record<AlloyKey, z.ZodType>>);

/** An alloy of the build's own, or figures of one's own for an alloy of the table. What is left out is taken from the table. */
export const alloySchema = z.strictObject({
  kind: z.literal('alloy'),
  id: idSchema('alloy'),
  name: nameSchema,
  family: z.enum(['aluminium', 'zinc', 'copper', 'iron']),
  figures: figuresSchema,
  /** Where the figures come from: a certificate, a measured casting; may be empty. */
  source: z.string().max(2_000),
});
export type OwnAlloy = Readonly<z.infer<typeof alloySchema>>;
export type OwnAlloyFigures = OwnAlloy['figures'];

/** Pairs of figures of which the first is never more than the second, with what they are called. */
const ascending = [
  ['solidusC', 'solidus', 'liquidusC', 'liquidus'],
  ['contractionLeast', 'least contraction', 'contractionUsual', 'usual contraction'],
  ['contractionLeast', 'least contraction', 'contractionMost', 'greatest contraction'],
  ['contractionUsual', 'usual contraction', 'contractionMost', 'greatest contraction'],
  ['pourLeastC', 'coldest pouring temperature', 'pourMostC', 'hottest pouring temperature'],
] as const satisfies readonly (readonly [AlloyKey, string, AlloyKey, string])[];

/** Two figures of which the lower one is the higher. */
export interface CrossedFigures {
  readonly low: string;
  readonly lowValue: number;
  readonly high: string;
  readonly highValue: number;
}

/** The first two figures that stand the wrong way round, what the row leaves out taken from the table; undefined when none do. */
export function crossedIn({ figures }: Alloy): CrossedFigures | undefined {
  for (const [lowKey, low, highKey, high] of ascending) {
    const [lowValue, highValue] = [figures[lowKey]?.value, figures[highKey]?.value];
    if (lowValue !== undefined && highValue !== undefined && lowValue > highValue)
      return { low, lowValue, high, highValue };
  }
  return undefined;
}

const asAlloys = new WeakMap<OwnAlloy, Alloy>();

/**
 * The record as look-ups hand alloys out: its own figures, and those of the table's row of that name for what it leaves out. The
 * same object for the same record.
 */
export function alloyOf(record: OwnAlloy): Alloy {
  const known = asAlloys.get(record);
  if (known) return known;
  const { name, family } = record;
  const table = alloyNamed(name)?.figures;
  const source = record.source || 'the build’s own row';
  const figures = alloyKeys.flatMap((key): readonly (readonly [AlloyKey, AlloyFigure])[] => {
    const value = record.figures[key];
    if (value !== undefined) return [[key, { value, status: 'written', source }]];
    const figure = table?.[key];
    return figure ? [[key, figure]] : [];
  });
  const made: Alloy = { name, family, figures: reaching(record, Object.fromEntries(figures)) };
  asAlloys.set(record, made);
  return made;
}

/** A usual contraction of one's own may lie outside what others published: their least and most then reach as far as it does. */
function reaching({ figures: own }: OwnAlloy, figures: Alloy['figures']): Alloy['figures'] {
  const { contractionLeast: least, contractionUsual: usual, contractionMost: most } = figures;
  if (own.contractionUsual === undefined || !usual) return figures;
  return {
    ...figures,
    ...(least && own.contractionLeast === undefined && least.value > usual.value ? { contractionLeast: usual } : {}),
    ...(most && own.contractionMost === undefined && most.value < usual.value ? { contractionMost: usual } : {}),
  };
}
