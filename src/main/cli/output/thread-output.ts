import { z } from 'zod';
import type { Thread } from '../../../shared/quantity/parse-thread.ts';
import { toInches } from '../../../shared/quantity/units.ts';
import { inchClearance, metricClearance } from '../../../shared/tables/clearance-holes.ts';
import { drillCalled, drillSeries, nearestDrills } from '../../../shared/tables/drills.ts';
import { holeForPercent, holeToTap, percentOfThread, tableTapDrill } from '../../../shared/tables/tap-drill.ts';
import { basicThread } from '../../../shared/tables/threads-basic.ts';
import { type KnownThread, knownThread, nearestThreads } from '../../../shared/tables/threads-known.ts';
import { drillOutput, drillSchema, statusSchema } from './drill-output.ts';

const percent = z.number().describe('Percent of the full thread, as `fullThread` says.');

/** What `thread --json` prints. */
export const threadOutputSchema = z
  .strictObject({
    format: z.literal('waywright-thread'),
    version: z.literal(1),
    written: z.string(),
    form: z.enum(['metric', 'trapezoidal', 'unified', 'whitworth']),
    hand: z.enum(['right', 'left']),
    series: z.string().optional().describe('coarse, fine, UNC, UNF, or as written.'),
    listed: z
      .strictObject({ name: z.string(), source: z.string(), status: statusSchema })
      .optional()
      .describe('Its row in the lists of the standards; absent when they have none.'),
    nearestListed: z.array(z.string()).describe('Listed threads nearest to one that is not.'),
    majorMm: z.number(),
    pitchMm: z.number(),
    perInch: z.number().describe('Threads per inch.'),
    basic: z.strictObject({
      pitchDiameterMm: z.number(),
      minorNutMm: z.number().describe('Minor diameter of the nut, D1.'),
      minorScrewMm: z.number().describe('Minor diameter of the screw at its root, d3.'),
      stressAreaMm2: z.number(),
      source: z.string(),
      stressAreaSource: z.string(),
      status: statusSchema,
    }),
    tapHole: z.strictObject({
      diameterMm: z.number(),
      percent,
      rule: z.enum(['major less pitch', 'percent of thread']),
      fullThread: z.string().describe('What 100 % is.'),
      table: z
        .strictObject({
          drill: z.string(),
          diameterMm: z.number(),
          percent,
          others: z.string().optional().describe('What other tables give.'),
          source: z.string(),
          status: statusSchema,
        })
        .optional(),
      drills: z
        .array(
          drillSchema.extend({
            percent,
            belowMinor: z.boolean().describe('Thinner than the minor diameter of the nut: the tap would jam.'),
          }),
        )
        .describe('From thin to thick.'),
    }),
    clearance: z
      .array(
        z.strictObject({
          fit: z.enum(['fine', 'medium', 'coarse', 'close', 'normal', 'loose']),
          diameterMm: z.number(),
          drill: z.string(),
          source: z.string(),
          status: statusSchema,
        }),
      )
      .describe('Empty when the standard does not list the size.'),
  })
  .meta({ title: 'Sizes of a thread' });

export type ThreadOutput = Readonly<z.infer<typeof threadOutputSchema>>;

const fullThread: Readonly<Record<Thread['form'], string>> = {
  metric: '1.299 P off the diameter, twice 3/4 of the sharp triangle',
  unified: '1.299 P off the diameter, twice 3/4 of the sharp triangle',
  trapezoidal: 'P off the diameter, the basic height of both sides',
  whitworth: '1.281 P off the diameter, the full depth of both sides',
};

/** Diameters nearer than this are one, in mm: inches come back with rounding. */
const SAME_MM = 1e-6;

/** @param percentWanted of the full thread; undefined for the rule of the trade. */
export function threadOutput(written: string, thread: Thread, percentWanted: number | undefined): ThreadOutput {
  const { form, majorMm, pitchMm, hand } = thread;
  const known = knownThread(form, majorMm, pitchMm);
  const series = known?.series ?? thread.series;
  return {
    format: 'waywright-thread',
    version: 1,
    written,
    form,
    hand,
    ...(series === undefined ? {} : { series }),
    ...(known === undefined ? {} : { listed: { name: known.name, source: known.source, status: known.status } }),
    nearestListed: known ? [] : nearestThreads(form, majorMm, pitchMm).map(({ name }) => name),
    majorMm,
    pitchMm,
    perInch: 1 / toInches(pitchMm),
    basic: { ...basicThread(form, majorMm, pitchMm) },
    tapHole: tapHoleOutput(thread, known, percentWanted),
    clearance: clearanceOf(thread).map((hole) => ({ ...hole })),
  };
}

function tapHoleOutput(
  { form, majorMm, pitchMm }: Thread,
  known: KnownThread | undefined,
  percentWanted: number | undefined,
): ThreadOutput['tapHole'] {
  const percentOf = (diameterMm: number) => percentOfThread(form, majorMm, pitchMm, diameterMm);
  const holeMm =
    percentWanted === undefined ? holeToTap(majorMm, pitchMm) : holeForPercent(form, majorMm, pitchMm, percentWanted);
  const { minorNutMm } = basicThread(form, majorMm, pitchMm);
  const row = known && tableTapDrill(known.name);
  const drill = row && drillCalled(row.drill);
  return {
    diameterMm: holeMm,
    percent: percentWanted ?? percentOf(holeMm),
    rule: percentWanted === undefined ? 'major less pitch' : 'percent of thread',
    fullThread: fullThread[form],
    ...(row && drill
      ? {
          table: {
            drill: row.drill,
            diameterMm: drill.diameterMm,
            percent: percentOf(drill.diameterMm),
            ...(row.others === undefined ? {} : { others: row.others }),
            source: row.source,
            status: row.status,
          },
        }
      : {}),
    drills: drillSeries
      .flatMap((name) => nearestDrills(name, holeMm).map((near, i) => drillOutput(near, holeMm, i === 0)))
      .map((near) => ({
        ...near,
        percent: percentOf(near.diameterMm),
        belowMinor: near.diameterMm < minorNutMm - SAME_MM,
      }))
      .sort((a, b) => a.diameterMm - b.diameterMm),
  };
}

function clearanceOf({ form, majorMm }: Thread) {
  if (form === 'metric') return metricClearance(majorMm);
  return form === 'unified' ? inchClearance(majorMm) : [];
}
