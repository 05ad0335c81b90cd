import type { BodyId, CastingId, MachineId, PartId, PourId } from '../../src/shared/base/ids.ts';
import { allOf } from '../../src/shared/base/pieces.ts';
import { type Casting, type Direction, defaultCasting, type Moulding } from '../../src/shared/build/casting.ts';
import { defaultMachine, type Machine } from '../../src/shared/build/machine.ts';
import { defaultPart, type Part } from '../../src/shared/build/part.ts';
import type { Pattern } from '../../src/shared/build/pattern.ts';
import { defaultPour, type Insert, type Pour, type PourJournal } from '../../src/shared/build/pour.ts';
import { type CastingSolid, drawnCasting } from '../../src/shared/foundry/casting-solid.ts';
import { sectionsOf } from '../../src/shared/foundry/hot-spots.ts';
import type { CastingInput, PourInput } from '../../src/shared/foundry/pour-input.ts';
import type { Sections } from '../../src/shared/foundry/sections.ts';
import { createSolids } from '../../src/shared/solid/create-solids.ts';
import type { Kernel } from '../../src/shared/solid/manifold/kernel.ts';
import type { PlacedBody } from '../../src/shared/solid/placed.ts';
import type { MachineType } from '../../src/shared/tables/machine-figures.ts';
import { materialNamed } from '../../src/shared/tables/materials.ts';
import { cylinder, type HandMade, placedBodies } from './placed-bodies.ts';

export const pourPart = (name: string): PartId => `part:${name}` as PartId;
export const pourBody = (part: string, index: number): BodyId => `body:${part}${index}` as BodyId;
export const pourMachine = (name: string): MachineId => `machine:${name}` as MachineId;

interface Solid {
  readonly bodies: readonly PlacedBody[];
  readonly solid: CastingSolid;
}

function solidFor(kernel: Kernel, name: string, hand: readonly HandMade[]): Solid {
  const part = pourPart(name);
  const bodies = placedBodies(hand).map(
    (body, i): PlacedBody => ({
      ...body,
      record: {
        ...body.record,
        id: pourBody(name, i),
        name: `${name} ${i}`,
        shape: { type: 'block' },
      } as PlacedBody['record'],
    }),
  );
  const solids = createSolids({ parts: () => [part], bodiesOf: () => bodies }, () => kernel);
  solids.compute(part);
  const solid = drawnCasting(part, solids);
  if (!solid) throw new Error(`${name} has no solid`);
  return { bodies, solid };
}

export interface SketchedCasting {
  readonly name: string;
  readonly bodies: readonly HandMade[];
  readonly moulding?: Moulding;
  readonly up?: Direction;
  readonly count?: number;
  readonly material?: string;
  readonly foamDensity?: string;
}

const known = new Map<string, Solid & { readonly sections: Sections }>();

function castingFor(kernel: Kernel, given: SketchedCasting): CastingInput {
  const key = JSON.stringify([given.name, given.bodies]);
  let made = known.get(key);
  if (!made) {
    const solid = solidFor(kernel, given.name, given.bodies);
    made = { ...solid, sections: allOf(sectionsOf(solid.solid, 15_000)).sections };
    known.set(key, made);
  }
  const part: Part = { ...defaultPart(pourPart(given.name), given.name, 1), material: given.material ?? 'A356' };
  const casting: Casting = {
    ...defaultCasting(`casting:${given.name}` as CastingId, part.id),
    moulding: given.moulding ?? 'loose pattern in green sand',
    foamDensity: given.foamDensity ?? '',
  };
  return { part, casting, solid: made.solid, sections: made.sections, bodies: made.bodies };
}

/** A round bar of steel as a part, to be cast in. */
export interface SketchedInsert {
  readonly name: string;
  readonly diameter: number;
  readonly length: number;
  readonly record?: Partial<Insert>;
}

export interface PourSketch {
  readonly castings: readonly SketchedCasting[];
  readonly inserts?: readonly SketchedInsert[];
  readonly machines?: readonly Machine[];
  readonly pour?: Partial<Pour>;
  readonly pours?: readonly Pour[];
  readonly patterns?: readonly Pattern[];
}

export const machineOf = (name: string, type: MachineType, figures: Machine['figures']): Machine => ({
  ...defaultMachine(pourMachine(name), name, type, 1),
  figures,
});

/** A pour of castings given by their shapes, all else as written. */
export function sketchPour(kernel: Kernel, sketch: PourSketch): PourInput {
  const castings = new Map(sketch.castings.map((one) => [pourPart(one.name), castingFor(kernel, one)]));
  const inserts = new Map(
    (sketch.inserts ?? []).map(({ name, diameter, length }) => {
      const { solid } = solidFor(kernel, name, [{ shape: cylinder('X', [0, 0], [0, length], diameter / 2) }]);
      const exact = { ...solid, volumeMm3: (Math.PI / 4) * diameter ** 2 * length };
      return [
        pourPart(name),
        { part: { ...defaultPart(pourPart(name), name, 9), material: 'mild steel' }, solid: exact },
      ] as const;
    }),
  );
  const pour: Pour = {
    ...defaultPour('pour:one' as PourId, 'One', 1),
    castings: sketch.castings.map(({ name, count = 1, up = '+Z' }) => ({ part: pourPart(name), count, up })),
    inserts: (sketch.inserts ?? []).map(
      ({ name, record }): Insert => ({
        name,
        part: pourPart(name),
        mass: '',
        material: 'mild steel',
        preheat: '',
        length: '',
        stays: true,
        ...record,
      }),
    ),
    ...sketch.pour,
  };
  return {
    pour,
    lengthUnit: 'mm',
    machines: sketch.machines ?? [],
    alloys: [],
    pours: [...(sketch.pours ?? []), pour],
    numbers: { place: () => undefined, resolved: () => undefined, record: () => undefined, namedBy: () => [] },
    castingOf: (part) => castings.get(part),
    insertOf: (part) => inserts.get(part),
    patternOf: (id) => (sketch.patterns ?? []).find((pattern) => pattern.id === id),
    materialNamed: (name) =>
      name === 'mild steel' ? { name, densityKgM3: 7850, source: 'given' } : materialNamed(name),
  };
}

export const journalOf = (more: Partial<PourJournal>): PourJournal => ({
  pouredAt: '2026-05-02T09:30:00Z',
  temperature: '',
  ambient: '',
  insertTemperature: '',
  charged: '',
  left: '',
  meltMinutes: '',
  fillSeconds: '',
  weather: '',
  result: 'not judged',
  defects: [],
  note: '',
  change: '',
  ...more,
});

export const sprue: Pour['gating'] = {
  spot: 'top',
  sprueHeight: '120',
  sprueTop: '22',
  sprueFoot: '14',
  runnerWidth: '',
  runnerHeight: '',
  runnerLength: '',
  gateWidth: '20',
  gateHeight: '8',
  gateLength: '15',
  gates: 2,
  cupVolume: '0.1 l',
  hollow: false,
};
