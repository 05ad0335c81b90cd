import { z } from 'zod';
import { materialsOf } from '../../../shared/build/look-up.ts';
import { materialOf } from '../../../shared/build/material.ts';
import type { Part } from '../../../shared/build/part.ts';
import type { Build, RecordId } from '../../../shared/build/records.ts';
import type { Works } from '../../../shared/check/works.ts';
import type { BodyProblem, MassProperties } from '../../../shared/solid/placed.ts';
import { materialNamed } from '../../../shared/tables/materials.ts';

const point = z.tuple([z.number(), z.number(), z.number()]);

const stateSchema = z.strictObject({
  volumeMm3: z.number(),
  areaMm2: z.number().describe('Whole surface.'),
  massKg: z.number().optional().describe('Absent when the density of the material is not known.'),
  centreMm: point.describe('Centre of mass.'),
  boxMinMm: point,
  boxMaxMm: point,
  inertiaMm5: z
    .tuple([z.number(), z.number(), z.number(), z.number(), z.number(), z.number()])
    .describe(
      'About the centre: ∫(y²+z²)dV, ∫(z²+x²)dV, ∫(x²+y²)dV, ∫xy dV, ∫yz dV, ∫zx dV. Times density for inertia.',
    ),
  pieces: z.number().int().describe('More than one: something hangs on nothing.'),
});

export const bodyOutputSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  shape: z.string(),
  adds: z.boolean(),
  finish: z.enum(['as cast', 'cored', 'machined']),
  copies: z.number().int(),
  idle: z.boolean().describe('The part would be the very same without it.'),
  whyNot: z
    .strictObject({
      why: z.enum(['not-placed', 'no-size', 'shape', 'refused']),
      code: z.string().optional(),
      at: z.array(z.string()).describe('Names of the stations and dimensions concerned.'),
    })
    .optional()
    .describe('Why it has no solid.'),
});

export const solidOutputSchema = z.strictObject({
  material: z
    .strictObject({ name: z.string(), densityKgM3: z.number().optional(), source: z.string() })
    .optional()
    .describe('The row that the part’s material was found in.'),
  finished: stateSchema,
  asCast: stateSchema,
});

type BodyOutput = z.infer<typeof bodyOutputSchema>;
type SolidOutput = z.infer<typeof solidOutputSchema>;

/** The bodies of a part in list order. */
export function bodiesOutput({ build, solids }: Works, part: Part): BodyOutput[] {
  const idle = new Set(solids.solidOf(part.id)?.idle);
  const refused = new Map(solids.refusedOf(part.id).map(({ body, why }) => [body, why]));
  return solids.bodiesOf(part.id).map((placed) => {
    const { id, name, adds, finish, shape } = placed.record;
    const fault = refused.get(id);
    const whyNot = placed.problem
      ? problemOutput(build, placed.problem)
      : fault && { why: 'refused' as const, code: fault, at: [] };
    return {
      id,
      name,
      shape: shape.type,
      adds,
      finish,
      copies: placed.moves.length,
      idle: idle.has(id),
      ...(whyNot && { whyNot }),
    };
  });
}

function problemOutput(build: Build, problem: BodyProblem): NonNullable<BodyOutput['whyNot']> {
  const names = (ids: readonly RecordId[]) =>
    ids.map((id) => {
      const record = build.get(id);
      return record && 'name' in record ? record.name : id;
    });
  if (problem.why === 'not-placed')
    return { why: 'not-placed', at: names([...problem.stations, ...problem.dimensions]) };
  return { why: problem.why, ...(problem.why === 'shape' && { code: problem.code }), at: names(problem.at) };
}

/** Undefined when the part has no body that is placed. */
export function solidOutput({ build, solids }: Works, part: Part): SolidOutput | undefined {
  const solid = solids.solidOf(part.id);
  if (!solid) return undefined;
  const material = materialNamed(part.material, materialsOf(build).map(materialOf));
  const density = material?.densityKgM3;
  return {
    ...(material && {
      material: {
        name: material.name,
        ...(density !== undefined && { densityKgM3: density }),
        source: material.source,
      },
    }),
    finished: stateOutput(solid.finished, density),
    asCast: stateOutput(solid.asCast, density),
  };
}

const stateOutput = (properties: MassProperties, density: number | undefined): SolidOutput['finished'] => ({
  volumeMm3: properties.volumeMm3,
  areaMm2: properties.areaMm2,
  ...(density !== undefined && { massKg: properties.volumeMm3 * 1e-9 * density }),
  centreMm: [...properties.centre],
  boxMinMm: [...properties.boxMin],
  boxMaxMm: [...properties.boxMax],
  inertiaMm5: [...properties.inertia],
  pieces: properties.pieces,
});

export type { BodyOutput, SolidOutput };
