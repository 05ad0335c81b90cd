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
 * Masses are those of the solids as drawn; stock left on them is not counted. Part-way through its route a part is weighed as cast and as finished, and the one that
 * is farther out of balance counts. What is round about the line adds weight alone, and may be without a mass.
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
  // Of what stands between two measured states both are weighed.
  const lumps: (readonly [Lump, Lump])[] = [];
  let isPending = false;
  const take = (found: readonly [Lump, Lump] | Unknown | undefined) => {
    if (!found) isPending = true;
    else if ('is' in found) unknown.push(found);
    else lumps.push(found);
  };
  take(lumpsOfPart(input.partOf(setup.part), setup.state));
  for (const fellow of setup.fellows) {
    const found = lumpsOfPart(input.partOf(fellow.part), fellow.state);
    const move = fellowPlace(fellow).move(worlds.drawn);
    const there = (lump: Lump): Lump => ({ ...lump, centre: moved(move, lump.centre) });
    take(found && !('is' in found) ? [there(found[0]), there(found[1])] : found);
  }
  for (const { piece, shape } of worlds.pieces) {
    if (piece.is !== 'fixture') continue;
    const found = lumpOfFixture(input, piece.index, shape, reading);
    take('is' in found ? found : [found, found]);
  }
  if (unknown.length > 0 || isPending) return { balance: undefined, unknown };
  const [one, other] = [0, 1].map((k) =>
    balanceAbout(
      worlds,
      lumps.map((two) => two[k]!),
      plateRadiusMm,
    ),
  ) as [Balance, Balance];
  return { balance: other.highestRpm < one.highestRpm ? other : one, unknown: [] };
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

/** The mass of a part in its condition, or in the two between which it stands; undefined while its solid is not worked out. */
function lumpsOfPart(
  input: PartInput | undefined,
  condition: PartCondition,
): readonly [Lump, Lump] | Unknown | undefined {
  if (!input) return undefined;
  const { part, material, figures } = input;
  const density = material?.densityKgM3;
  if (density === undefined) return { is: 'material', name: part.material };
  if (!figures) return undefined;
  const lump = ({ volumeMm3, centre }: MassProperties): Lump => ({
    massKg: (volumeMm3 / MM3_PER_M3) * density,
    centre,
  });
  const [from, to] = solidsIn(input, figures, condition);
  return [lump(from), lump(to)];
}

/** The states of the solid that a condition lies between: the same twice where it is one that is measured. */
function solidsIn(
  { bodies, operations }: PartInput,
  { asCast, finished }: NonNullable<PartInput['figures']>,
  condition: PartCondition,
): readonly [MassProperties, MassProperties] {
  if (condition.is === 'finished') return [finished, finished];
  if (condition.is === 'as cast') return [asCast, asCast];
  const done = operations.slice(0, operations.findIndex(({ id }) => id === condition.operation) + 1);
  const made = new Set(done.flatMap((operation) => bodiesMade(operation, bodies).map(({ record }) => record.id)));
  const machined = bodies.filter(({ record }) => record.finish === 'machined');
  const count = machined.filter(({ record }) => made.has(record.id)).length;
  return [count === machined.length ? finished : asCast, count === 0 && machined.length > 0 ? asCast : finished];
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
