import { z } from 'zod';
import { dimensionsOf, recordOf } from '../../../shared/build/look-up.ts';
import type { Part } from '../../../shared/build/part.ts';
import type { Build } from '../../../shared/build/records.ts';
import type { Works } from '../../../shared/check/works.ts';
import type { ResolvedDimension } from '../../../shared/drawing/drawing.ts';
import { bodiesOutput, bodyOutputSchema, solidOutput, solidOutputSchema } from './solid-output.ts';

const bandSchema = z.strictObject({
  minusMm: z.number().describe('Worst case below the nominal; 0 or less.'),
  plusMm: z.number().describe('Worst case above the nominal; 0 or more.'),
  rssMm: z.number().describe('Half width of the root-sum-square band.'),
  rssCentreMm: z.number().describe('Offset of that band from the nominal.'),
});

const stationSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  form: z.enum(['face', 'shoulder', 'centreline']),
  datum: z.boolean(),
  group: z.number().int().describe('0 is tied to the datum; others float apart from it.'),
  atMm: z.number().describe('Position from the datum, or from the first station of its group.'),
  band: bandSchema,
  path: z.array(z.string()).describe('Ids of the dimensions that place it, in order.'),
});

const dimensionSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  measures: z.union([
    z.strictObject({ type: z.literal('between'), axis: z.enum(['X', 'Y', 'Z']), from: z.string(), to: z.string() }),
    z.strictObject({ type: z.literal('size'), form: z.string() }),
  ]),
  written: z.string(),
  unit: z.enum(['length', 'angle', 'mass', 'temperature', 'number']),
  value: z.number().optional().describe('In mm, degrees, kg or °C; absent when it cannot be worked out.'),
  whyNot: z.enum(['empty', 'text', 'ring', 'waiting']).optional(),
  limits: z
    .strictObject({
      lower: z.number(),
      upper: z.number(),
      origin: z.enum(['written', 'general', 'casting']),
      row: z.string().describe('The table row behind them.'),
    })
    .optional(),
  source: z.enum(['drawn', 'measured', 'assumed', 'derived']),
  finish: z.enum(['as cast', 'machined']),
});

/** What `part --json` prints. */
export const partOutputSchema = z
  .strictObject({
    format: z.literal('waywright-part'),
    version: z.literal(1),
    part: z.strictObject({
      id: z.string(),
      name: z.string(),
      number: z.string(),
      make: z.enum(['cast', 'stock', 'bought']),
      material: z.string(),
      quantity: z.number().int(),
    }),
    axes: z.array(
      z.strictObject({
        axis: z.enum(['X', 'Y', 'Z']),
        stations: z.array(stationSchema),
        conflicts: z.array(z.strictObject({ dimensions: z.array(z.string()), closingErrorMm: z.number() })),
      }),
    ),
    dimensions: z.array(dimensionSchema),
    bodies: z.array(bodyOutputSchema).describe('In list order, as they add and take away.'),
    solid: solidOutputSchema.optional().describe('Absent when no body is placed.'),
    findings: z.array(z.string()).describe('Keys of the findings on it, as `check` gives them.'),
  })
  .meta({ title: 'One part of a Waywright build' });

export type PartOutput = Readonly<z.infer<typeof partOutputSchema>>;

export function partOutput(works: Works, part: Part): PartOutput {
  const { build, drawing } = works;
  const { id, name, number, make, material, quantity } = part;
  const solid = solidOutput(works, part);
  return {
    format: 'waywright-part',
    version: 1,
    part: { id, name, number, make, material, quantity },
    axes: drawing.axesOf(id).map(({ axis, stations, conflicts }) => ({
      axis,
      stations: stations.flatMap(({ id: stationId, group, at, band, path }) => {
        const station = recordOf(build, 'station', stationId);
        if (!station) return [];
        return [
          {
            id: stationId,
            name: station.name,
            form: station.form,
            datum: station.datum,
            group,
            atMm: at,
            band: { minusMm: band.minus, plusMm: band.plus, rssMm: band.rss, rssCentreMm: band.rssCentre },
            path: [...path],
          },
        ];
      }),
      conflicts: conflicts.map(({ dimensions, loop }) => ({
        dimensions: [...dimensions],
        closingErrorMm: loop.closingError,
      })),
    })),
    dimensions: dimensionsOf(build, id).map((record) => {
      const resolved = drawing.dimension(record.id);
      return {
        id: record.id,
        name: record.name,
        measures: measuresOf(build, record.measure),
        written: record.value,
        ...resolvedOutput(resolved),
        source: record.source,
        finish: record.finish,
      };
    }),
    bodies: bodiesOutput(works, part),
    ...(solid && { solid }),
    findings: works.findingsOf(id).map(({ key }) => key),
  };
}

function measuresOf(
  build: Build,
  measure: ReturnType<typeof dimensionsOf>[number]['measure'],
): PartOutput['dimensions'][number]['measures'] {
  if (measure.type === 'size') return { type: 'size', form: measure.form };
  const from = recordOf(build, 'station', measure.from);
  const to = recordOf(build, 'station', measure.to);
  return { type: 'between', axis: from?.axis ?? 'X', from: from?.name ?? measure.from, to: to?.name ?? measure.to };
}

const resolvedOutput = ({ unit, value, problem, limits }: ResolvedDimension) => ({
  unit,
  ...(value === undefined ? {} : { value }),
  ...(problem === undefined ? {} : { whyNot: problem.why }),
  ...(limits === undefined ? {} : { limits: { ...limits } }),
});
