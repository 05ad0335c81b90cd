import { z } from 'zod';
import { edges, type Process, processes } from '../../../shared/build/operation.ts';
import type { AdviceWanted, CutAdvice } from '../../../shared/machining/cutting/advise.ts';
import { feedPer } from '../../../shared/machining/cutting/conditions.ts';
import { cuttingMetals } from '../../../shared/tables/cutting-metals.ts';
import type { FigureRange } from '../../../shared/tables/cutting-row.ts';

const sourced = {
  source: z.string(),
  status: z
    .enum(['read', 'from memory', 'common practice'])
    .describe('Read on a published page, remembered and still to be checked, or a fact of the trade without a source.'),
};

const rangeSchema = (what: string) =>
  z
    .strictObject({ least: z.number(), most: z.number(), ...sourced })
    .describe(`${what}, from the slow or fine end of the table to the other.`);

const startSchema = z.strictObject({
  value: z.number(),
  from: z
    .enum(['chosen', 'table', 'machine', 'thread'])
    .describe('Begun from the table, kept within the range of the machine, or led by the thread.'),
});

/** What `speed --json` prints. */
export const speedOutputSchema = z
  .strictObject({
    format: z.literal('waywright-speed'),
    version: z.literal(1),
    material: z.string().describe('As written.'),
    metal: z.enum(cuttingMetals).describe('Row of the tables that it is taken as.'),
    metalBy: z
      .enum(['name', 'table', 'group'])
      .describe('By what: its name, its row among the materials, or its group.'),
    process: z.enum(processes),
    edge: z.enum(edges),
    diameterMm: z
      .number()
      .optional()
      .describe('Of work or tool; of shaping and planing the length of the stroke. Absent of a saw.'),
    pitchMm: z.number().optional().describe('Of a tap.'),
    finish: z.boolean(),
    speed: z
      .strictObject({ start: startSchema, table: rangeSchema('Cutting speed, m/min').optional() })
      .describe('m/min; of a grinder that of the rim of the wheel.'),
    rpm: z
      .strictObject({
        start: startSchema,
        table: z.strictObject({ least: z.number(), most: z.number() }).optional(),
        asked: z.number().describe('Before the machine had its say.'),
      })
      .optional()
      .describe('Turns, of shaper and planer double strokes, per minute. Absent of a saw.'),
    feed: z
      .strictObject({
        per: z.enum(['turn', 'tooth', 'stroke']),
        start: startSchema,
        table: rangeSchema('mm').optional(),
        speedMmMin: z.number().optional().describe('Feed speed, with all teeth.'),
      })
      .optional(),
    load: z
      .strictObject({
        depthMm: z.number().optional(),
        breadthMm: z.number().optional(),
        forceN: z.number().optional().describe('Main cutting force, of a single edge.'),
        torqueNm: z.number().optional(),
        powerKw: z.number().describe('At the edge.'),
        motorKw: z.number().describe('Of the motor, with what the drive loses.'),
        efficiency: z.number(),
        ...sourced,
      })
      .optional()
      .describe('Absent where nothing is known of the force, or the process has no formula.'),
    care: z.string().optional().describe('What to mind with this metal; common practice.'),
    warnings: z.array(z.string()),
  })
  .meta({ title: 'Speed, feed and power of a cut' });

export type SpeedOutput = Readonly<z.infer<typeof speedOutputSchema>>;

const rangeOutput = ({ least, most, source, status }: FigureRange) => ({ least, most, source, status });

export function speedOutput(material: string, wanted: AdviceWanted, advice: CutAdvice): SpeedOutput {
  const { process, edge, diameterMm, pitchMm, finish } = wanted;
  const { found, speed, rpm, asked, feed, load, care, warnings } = advice;
  const turning = rpm && asked !== undefined ? { rpm, asked } : undefined;
  return {
    format: 'waywright-speed',
    version: 1,
    material,
    metal: found.metal,
    metalBy: found.by,
    process,
    edge,
    ...(diameterMm !== undefined && { diameterMm }),
    ...(pitchMm !== undefined && { pitchMm }),
    finish,
    speed: { start: start(speed), ...(speed.row && { table: rangeOutput(speed.row) }) },
    ...(turning && {
      rpm: {
        start: start(turning.rpm),
        ...(advice.rpmTable && { table: advice.rpmTable }),
        asked: turning.asked,
      },
    }),
    ...(feed && {
      feed: {
        per: feedPer(process as Process),
        start: start(feed),
        ...(feed.row && { table: rangeOutput(feed.row) }),
        ...(advice.feedMmMin !== undefined && { speedMmMin: advice.feedMmMin }),
      },
    }),
    ...(load && {
      load: {
        ...(load.depthMm !== undefined && { depthMm: load.depthMm }),
        ...(load.breadthMm !== undefined && { breadthMm: load.breadthMm }),
        ...(load.forceN !== undefined && { forceN: load.forceN }),
        ...(load.torqueNm !== undefined && { torqueNm: load.torqueNm }),
        powerKw: load.powerKw,
        motorKw: load.motorKw,
        efficiency: load.efficiency,
        source: load.source,
        status: load.status,
      },
    }),
    ...(care !== undefined && { care }),
    warnings: [...warnings],
  };
}

const start = ({ value, from }: { readonly value: number; readonly from: SpeedOutput['speed']['start']['from'] }) => ({
  value,
  from,
});
