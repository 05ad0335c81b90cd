import { z } from 'zod';
import { drillSeries, drills, nearestDrills } from '../../../shared/tables/drills.ts';
import { drillOutput, drillSchema } from './drill-output.ts';

/** What `hole --json` prints. */
export const holeOutputSchema = z
  .strictObject({
    format: z.literal('waywright-hole'),
    version: z.literal(1),
    written: z.string(),
    diameterMm: z.number(),
    series: z.array(
      z.strictObject({
        series: z.enum(drillSeries),
        thinnestMm: z.number().describe('Thinnest drill of the series.'),
        thickestMm: z.number(),
        drills: z
          .array(drillSchema)
          .describe('Nearest first: the drill of this size alone, else one on each side; none far from the series.'),
      }),
    ),
  })
  .meta({ title: 'Drills for a hole' });

export type HoleOutput = Readonly<z.infer<typeof holeOutputSchema>>;

export function holeOutput(written: string, diameterMm: number): HoleOutput {
  return {
    format: 'waywright-hole',
    version: 1,
    written,
    diameterMm,
    series: drillSeries.map((series) => ({
      series,
      thinnestMm: drills[series][0]!.diameterMm,
      thickestMm: drills[series].at(-1)!.diameterMm,
      drills: nearestDrills(series, diameterMm).map((drill, i) => drillOutput(drill, diameterMm, i === 0)),
    })),
  };
}
