import { z } from 'zod';

/** What `chain --json` prints. */
export const chainOutputSchema = z
  .strictObject({
    format: z.literal('waywright-chain'),
    version: z.literal(1),
    part: z.strictObject({ id: z.string(), name: z.string() }),
    axis: z.enum(['X', 'Y', 'Z']),
    from: z.strictObject({ id: z.string(), name: z.string() }),
    to: z.strictObject({ id: z.string(), name: z.string() }),
    tied: z.boolean().describe('False when no dimension ties the two: then there are no figures and no links.'),
    nominalMm: z.number().optional().describe('Signed, from the first station to the second.'),
    worstCase: z.strictObject({ leastMm: z.number(), mostMm: z.number() }).optional(),
    rss: z.strictObject({ leastMm: z.number(), mostMm: z.number() }).optional().describe('Root-sum-square band.'),
    links: z
      .array(
        z.strictObject({
          id: z.string(),
          name: z.string(),
          sign: z.union([z.literal(1), z.literal(-1)]).describe('1 when walked the way it was dimensioned.'),
          written: z.string(),
          valueMm: z.number(),
          lowerMm: z.number().optional(),
          upperMm: z.number().optional(),
          limits: z.string().describe('Where its limits come from; empty when it has none and counts as exact.'),
        }),
      )
      .describe('The dimensions on the way, in order.'),
  })
  .meta({ title: 'Chain between two stations of a Waywright build' });

export type ChainOutput = Readonly<z.infer<typeof chainOutputSchema>>;
