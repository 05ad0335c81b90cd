import type { Machine } from '../../build/machine.ts';
import { readFigures } from '../../plan/machine-figures-read.ts';
import { foundryPractice } from '../../tables/foundry-practice.ts';
import { patternPractice } from '../../tables/pattern-practice.ts';
import { type Figure, fromTable, sumOf, worked } from '../figure.ts';
import { FOAM_GAS_L_PER_G, foamCooling, foamGas } from '../foam.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';
import type { PourInput } from '../pour-input.ts';
import type { ChargeCheck } from './charge-check.ts';
import { flaskFigure, sandDensityOf } from './lift-check.ts';
import { packInFlask } from './pack-in-flask.ts';
import type { PourAlloy } from './pour-alloy.ts';
import type { ReadPour } from './read-pour.ts';
import type { Standing } from './standing.ts';
import { type PourVerdict, verdict, type Way } from './verdict.ts';
import { writtenReader } from './written-reader.ts';

/** What foam takes from the metal and gives off. */
export interface FoamCheck {
  readonly density: Figure;
  /** Kilograms of foam that are burnt out. */
  readonly mass: Figure | undefined;
  /** Mean loss of the metal that replaces it, K; the leading front loses more. */
  readonly cooling: Figure | undefined;
  /** Litres at 0 °C and 1 atm. */
  readonly gas: Figure | undefined;
}

export interface MouldCheck {
  /** Clear volume of the flask less what is in it. */
  readonly sandVolume: Figure | undefined;
  readonly sandMass: Figure | undefined;
  readonly sandDensity: Figure;
  readonly coverAboveWanted: Figure;
  readonly coverAroundWanted: Figure;
  /** What there is of it, as the castings would stand best. */
  readonly coverAround: Figure | undefined;
  readonly coverAbove: Figure | undefined;
  readonly verdicts: readonly PourVerdict[];
  readonly unknown: readonly FoundryUnknown[];
}

/** Undefined where no casting is moulded in foam. */
export function foamCheck(
  input: PourInput,
  alloy: PourAlloy | undefined,
  standings: readonly Standing[],
): FoamCheck | undefined {
  const foamed = standings.filter(({ foam }) => foam);
  if (foamed.length === 0) return undefined;
  const read = writtenReader(input.lengthUnit, []);
  const density =
    foamed.map(({ casting }) => read.density(casting.casting?.foamDensity ?? '', 'foamDensity')).find((one) => one) ??
    fromTable(foundryPractice.foamKgM3, 'kg/m³');
  const volume = foamed.reduce((sum, { casting, count }) => sum + count * (casting.solid?.volumeMm3 ?? 0), 0);
  const [liquid, heat] = [alloy?.figure('liquidDensityKgM3'), alloy?.figure('liquidHeatKJKgK')];
  return {
    density,
    mass: worked('kg', 'foam of all castings', [density], (rho) => volume * 1e-9 * rho),
    cooling: worked(
      'K',
      'heat to melt, break down and drive off the foam, 1.8 MJ/kg, over all the metal (worked out; 1.4 to 1.8)',
      [density, liquid, heat],
      foamCooling,
    ),
    gas: worked('l', `${FOAM_GAS_L_PER_G} l of each gram at 800 °C (a conference abstract)`, [density], (rho) =>
      foamGas(volume, rho),
    ),
  };
}

/** Sand in the flask, and what covers the castings. */
export function mouldCheck(
  input: PourInput,
  read: ReadPour,
  charge: ChargeCheck,
  standings: readonly Standing[],
): MouldCheck {
  const unknown: FoundryUnknown[] = [];
  const sandDensity = sandDensityOf(read, standings);
  const coverAroundWanted = read.coverAround ?? fromTable(patternPractice.coverAround, 'mm');
  const coverAboveWanted = read.coverAbove ?? fromTable(patternPractice.coverAbove, 'mm');
  const flask = input.machines.find(({ id }) => id === input.pour.flask);
  if (!flask) unknown.push({ is: 'field', field: 'flask' });
  const room = flask && roomOf(input, flask);
  if (flask && !room) {
    for (const key of ['insideLength', 'insideWidth', 'dragHeight']) {
      if (readFigures(flask, input.lengthUnit).values.get(key) === undefined)
        unknown.push({ is: 'figure', machine: flask.id, key });
    }
  }
  const clear = room && worked('mm³', 'clear inside', [room.length, room.width, room.depth], (l, w, d) => l * w * d);
  const inside = sumOf('mm³', '', [charge.castingsVolume, charge.gatingVolume, charge.risersVolume]);
  const sandVolume = worked('mm³', 'the flask less castings, gating and risers', [clear, inside], (all, metal) =>
    Math.max(0, all - metal),
  );
  const around = room && coverIn(room, standings);
  const tallest = Math.max(0, ...standings.map(({ heightMm }) => heightMm));
  // As much sand beneath a casting as beside it.
  const above =
    room && standings.length > 0
      ? worked(
          'mm',
          'depth of the flask less the casting and the sand beneath it',
          [room.depth, coverAroundWanted],
          (depth, below) => depth - tallest - below,
        )
      : undefined;
  return {
    sandVolume,
    sandMass: worked('kg', 'sand by its density', [sandVolume, sandDensity], (mm3, rho) => mm3 * 1e-9 * rho),
    sandDensity,
    coverAboveWanted,
    coverAroundWanted,
    coverAround: around,
    coverAbove: above,
    verdicts: room ? coverVerdicts(input, standings, tallest, around, above, coverAroundWanted, coverAboveWanted) : [],
    unknown,
  };
}

interface Room {
  readonly length: Figure;
  readonly width: Figure;
  readonly depth: Figure;
}

function roomOf(input: PourInput, flask: Machine): Room | undefined {
  const [length, width, drag, cope] = (['insideLength', 'insideWidth', 'dragHeight', 'copeHeight'] as const).map(
    (key) => flaskFigure(input, flask, key, 'mm'),
  );
  const depth = drag && sumOf('mm', flask.name, [drag, cope]);
  return length && width && depth ? { length, width, depth } : undefined;
}

function coverIn({ length, width }: Room, standings: readonly Standing[]): Figure | undefined {
  const sides = standings.flatMap(({ acrossMm, count }) => Array.from({ length: count }, () => acrossMm));
  if (sides.length === 0) return undefined;
  return worked('mm', 'sand beside and between the castings, as they stand best in rows', [length, width], (l, w) =>
    packInFlask(sides, l, w),
  );
}

function coverVerdicts(
  input: PourInput,
  standings: readonly Standing[],
  tallest: number,
  around: Figure | undefined,
  above: Figure | undefined,
  aroundWanted: Figure,
  aboveWanted: Figure,
): readonly PourVerdict[] {
  const ways: Way[] = input.machines
    .filter(({ type, id }) => type === 'flask' && id !== input.pour.flask)
    .filter((machine) => {
      const room = roomOf(input, machine);
      const beside = room && coverIn(room, standings);
      if (!room || !beside) return false;
      return beside.value >= aroundWanted.value && room.depth.value - tallest - aroundWanted.value >= aboveWanted.value;
    })
    .slice(0, 2)
    .map(({ id }) => ({ is: 'machine', machine: id }));
  const about = { machine: input.pour.flask };
  return [[around, aroundWanted] as const, [above, aboveWanted] as const].flatMap(([has, needs]) => {
    if (!has) return [];
    const state = has.value >= needs.value - 1e-6 ? 'clear' : has.value > 0 ? 'caution' : 'stop';
    return [verdict('flask-cover', state, { about, has, needs, ways })];
  });
}
