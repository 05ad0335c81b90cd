import { z } from 'zod';
import { type Drill, drillSeries } from '../../../shared/tables/drills.ts';

export const statusSchema = z
  .enum(['read', 'from memory'])
  .describe('Whether the row was read on a published page or is remembered and still to be checked.');

/** A drill of one of the series, beside a hole that is asked for. */
export const drillSchema = z.strictObject({
  series: z.enum(drillSeries),
  name: z.string().describe('As it is called: `6.8 mm`, `No 7`, `F`, `21/64 in`.'),
  diameterMm: z.number(),
  differenceMm: z.number().describe('Drill less hole: above 0 the drill is thicker.'),
  nearest: z.boolean().describe('The nearest drill of its series; the other one lies on the other side of the hole.'),
  source: z.string(),
  status: statusSchema,
});

export type DrillOutput = Readonly<z.infer<typeof drillSchema>>;

export const drillOutput = (drill: Drill, holeMm: number, nearest: boolean): DrillOutput => ({
  ...drill,
  differenceMm: drill.diameterMm - holeMm,
  nearest,
});
