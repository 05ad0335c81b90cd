import { axesAcross } from '../../build/body-uses.ts';
import type { PartCondition, Setup } from '../../build/setup.ts';
import { type Axis, axes } from '../../build/station.ts';
import type { Reading } from '../../plan/amounts.ts';
import type { Unknown } from '../../plan/unknown.ts';
import { boundsOf } from '../../solid/bounds.ts';
import { exactVolume } from '../../solid/exact-volume.ts';
import { moved } from '../../solid/moves.ts';
import type { MassProperties, Vec3 } from '../../solid/placed.ts';
import { COUNTERWEIGHT_PLACE, GRAVITY, LARGEST_FORCE_SHARE } from '../practice.ts';
import { bodiesMade } from '../route/made-holes.ts';
import type { Balance } from '../setup-check.ts';
import { fellowPlace } from './body-recipe.ts';
import type { PartInput, SetupInput } from './setup-input.ts';
import type { Worlds } from './world.ts';

/** Mass and where its centre lies, in the first part's frame. */
interface Lump {
  readonly massKg: number;
  readonly centre: Vec3;
}

/** `balance` undefined and nothing unknown: a solid is still to be worked out. */
export interface BalanceFound {
  readonly balance: Balance | undefined;
  readonly unknown: readonly Unknown[];
}

const MM3_PER_M3 = 1e9;

/** Off its axis by less than this the work is in balance, mm: solids are measured no closer. */
const IN_BALANCE_MM = 1e-3;

/**
 * How far the centre of all that turns lies off the line, and what follows.
 *
 *     imbalance = mass × eccentricity
 *     highest speed: imbalance × ω² = share × weight   (share: common practice, no source)
 *     counterweight × its radius = imbalance
 *
 * Masses are those of the solids as drawn; stock left on them is not counted. What is round about the line adds weight alone, and may be without a mass.
 *
 * @param plateRadiusMm of the face plate that carries the work, where the counterweight would be bolted
 */
export function balanceOf(
  input: SetupInput,
  worlds: Worlds,
  reading: Reading,
  plateRadiusMm: number | undefined,
): BalanceFound {
  const { setup } = input;
  const unknown: Unknown[] = [];
  const lumps: Lump[] = [];
  let isPending = false;
  const take = (found: Lump | Unknown | undefined) => {
    if (!found) isPending = true;
    else if ('is' in found) unknown.push(found);
    else lumps.push(found);
  };
  take(lumpOfPart(input.partOf(setup.part), setup.state, 'state'));
  setup.fellows.forEach((fellow, i) => {
    const lump = lumpOfPart(input.partOf(fellow.part), fellow.state, `fellows/${i}/state`);
    take(
      lump && !('is' in lump) ? { ...lump, centre: moved(fellowPlace(fellow).move(worlds.drawn), lump.centre) } : lump,
    );
  });
  worlds.pieces.forEach((sweep) => {
    if (sweep.piece.is === 'fixture') take(lumpOfFixture(input, sweep.piece.index, sweep.shape, reading));
  });
  if (unknown.length > 0 || isPending) return { balance: undefined, unknown };
  return { balance: balanceAbout(worlds, lumps, plateRadiusMm), unknown: [] };
}

function balanceAbout({ drawn }: Worlds, lumps: readonly Lump[], plateRadiusMm: number | undefined): Balance {
  const { axis, u, v } = drawn.line;
  const [first, second] = axesAcross(axis).map((one: Axis) => axes.indexOf(one)) as [number, number];
  let [massKg, alongFirst, alongSecond] = [0, 0, 0];
  for (const lump of lumps) {
    massKg += lump.massKg;
    alongFirst += lump.massKg * (lump.centre[first]! - u);
    alongSecond += lump.massKg * (lump.centre[second]! - v);
  }
  const imbalanceKgMm = Math.hypot(alongFirst, alongSecond);
  const eccentricityMm = massKg > 0 ? imbalanceKgMm / massKg : 0;
  const isOff = eccentricityMm > IN_BALANCE_MM;
  const radius = plateRadiusMm === undefined ? undefined : COUNTERWEIGHT_PLACE * plateRadiusMm;
  // ω² = share × g / e, e in m.
  const omega = Math.sqrt((LARGEST_FORCE_SHARE * GRAVITY) / (eccentricityMm / 1000));
  return {
    massKg,
    eccentricityMm,
    directionDeg: isOff ? (Math.atan2(alongSecond, alongFirst) * 180) / Math.PI : 0,
    imbalanceKgMm,
    counterweightKg: radius === undefined ? undefined : imbalanceKgMm / radius,
    counterweightRadiusMm: radius,
    highestRpm: isOff ? (omega * 30) / Math.PI : Infinity,
  };
}

/** The mass of a part in its condition; undefined while its solid is not worked out. */
function lumpOfPart(input: PartInput | undefined, condition: PartCondition, field: string): Lump | Unknown | undefined {
  if (!input) return undefined;
  const { part, material, figures } = input;
  if (material?.densityKgM3 === undefined) return { is: 'material', name: part.material };
  if (!figures) return undefined;
  const solid = solidIn(input, figures, condition);
  // Between the two states that solids are measured in, nobody knows.
  if (!solid) return { is: 'field', field };
  return { massKg: (solid.volumeMm3 / MM3_PER_M3) * material.densityKgM3, centre: solid.centre };
}

/** The state of the solid that a condition comes to, if it is one of the two that are measured. */
function solidIn(
  { bodies, operations }: PartInput,
  figures: NonNullable<PartInput['figures']>,
  condition: PartCondition,
): MassProperties | undefined {
  if (condition.is !== 'after') return condition.is === 'finished' ? figures.finished : figures.asCast;
  const done = operations.slice(0, operations.findIndex(({ id }) => id === condition.operation) + 1);
  const made = new Set(done.flatMap((operation) => bodiesMade(operation, bodies).map(({ record }) => record.id)));
  const machined = bodies.filter(({ record }) => record.finish === 'machined');
  if (machined.every(({ record }) => made.has(record.id))) return figures.finished;
  return machined.some(({ record }) => made.has(record.id)) ? undefined : figures.asCast;
}

function lumpOfFixture(
  { setup, materialNamed }: SetupInput,
  index: number,
  shape: Worlds['pieces'][number]['shape'],
  reading: Reading,
): Lump | Unknown {
  const fixture = setup.fixtures[index]!;
  const box = boundsOf({ shape, moves: [[1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0]] })!;
  const centre = box.min.map((low, k) => (low + box.max[k]!) / 2) as unknown as Vec3;
  const field = `fixtures/${index}/mass`;
  const written = reading.plain(fixture.mass, field, 'mass');
  if (!written.ok) return written.error;
  if (written.value !== undefined) {
    return written.value > 0 ? { massKg: written.value, centre } : { is: 'written', field, text: fixture.mass };
  }
  const density = materialNamed(fixture.material)?.densityKgM3;
  if (density !== undefined) return { massKg: (exactVolume(shape) / MM3_PER_M3) * density, centre };
  // Its weight could only make the work steadier.
  if (fixture.shape.is === 'round') return { massKg: 0, centre };
  return fixture.material.trim() === '' ? { is: 'field', field } : { is: 'material', name: fixture.material };
}

/** Holdings in which the work turns. */
export const turns = ({ holding }: Setup): boolean => holding.as !== 'vise' && holding.as !== 'clamped to the table';
