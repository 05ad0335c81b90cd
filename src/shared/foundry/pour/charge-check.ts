import type { PartId } from '../../base/ids.ts';
import { foundryPractice } from '../../tables/foundry-practice.ts';
import { chargeOf } from '../charge.ts';
import { drawn, type Figure, fromTable, sumOf, weakest, worked } from '../figure.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';
import type { PourInput } from '../pour-input.ts';
import type { PourAlloy } from './pour-alloy.ts';
import type { ReadPour } from './read-pour.ts';

/** Of aluminium, as the starting value of the overflow counts it. */
const ALUMINIUM_KG_M3 = 2680;

/** What one of the castings is of the charge. */
export interface CastingCharge {
  readonly part: PartId;
  readonly count: number;
  /** Of one, as it is poured. */
  readonly volume: Figure | undefined;
  readonly mass: Figure | undefined;
}

/** Volumes and masses of a pour. What is not known is left out of the sums, and `unknown` says so: they are then too small. */
export interface ChargeCheck {
  readonly castings: readonly CastingCharge[];
  readonly castingsVolume: Figure | undefined;
  readonly castingsMass: Figure | undefined;
  readonly sprue: Figure | undefined;
  readonly runner: Figure | undefined;
  readonly gates: Figure | undefined;
  readonly cup: Figure | undefined;
  readonly gatingVolume: Figure | undefined;
  readonly risersVolume: Figure | undefined;
  readonly overflow: Figure | undefined;
  readonly loss: Figure | undefined;
  readonly heel: Figure | undefined;
  /** Into the mould. */
  readonly poured: Figure | undefined;
  /** Into the crucible. */
  readonly charge: Figure | undefined;
  /** Liquid in the crucible, litres. */
  readonly liquid: Figure | undefined;
  /** Percent of what is poured that is casting. */
  readonly yield: Figure | undefined;
  readonly unknown: readonly FoundryUnknown[];
}

export function chargeCheck(input: PourInput, read: ReadPour, alloy: PourAlloy | undefined): ChargeCheck {
  const { pour, castingOf } = input;
  const unknown: FoundryUnknown[] = [];
  if (pour.castings.length === 0) unknown.push({ is: 'field', field: 'castings' });
  const density = alloy?.figure('solidDensityKgM3');
  const liquidDensity = alloy?.figure('liquidDensityKgM3');
  const castings = pour.castings.map(({ part, count }): CastingCharge => {
    const solid = castingOf(part)?.solid;
    if (!solid) unknown.push({ is: 'solid', part });
    const volume = solid && drawn(solid.volumeMm3, 'mm³', 'volume of its solid as poured');
    return { part, count, volume, mass: massOf(volume, density) };
  });
  const castingsVolume = sumOf(
    'mm³',
    'volumes of all castings',
    castings.map(({ volume, count }) => worked('mm³', '', [volume], (one) => one * count)),
  );
  const gating = gatingVolumes(read, pour.gating.gates, unknown);
  const gatingVolume = sumOf('mm³', 'sprue, runner, gates and cup', Object.values(gating));
  const risersVolume = risersOf(read, unknown);
  const overflow =
    read.overflow ??
    worked('kg', overflowWords(alloy), [fromTable(foundryPractice.overflowKg, 'kg'), density], (kg, rho) =>
      alloy?.family === 'aluminium' ? kg : (kg * rho) / ALUMINIUM_KG_M3,
    );
  const loss = read.loss ?? alloy?.figure('meltLoss');
  const beforeHeel = sumOf('kg', '', [
    massOf(castingsVolume, density),
    massOf(gatingVolume, density),
    massOf(risersVolume, density),
    overflow,
  ]);
  const heel =
    read.heel ??
    worked(
      'kg',
      `${foundryPractice.heelPercent.value} % of what is poured; ${foundryPractice.heelPercent.source}`,
      [beforeHeel, fromTable(foundryPractice.heelPercent, '%')],
      (kg, percent) => (kg * percent) / 100,
    );
  const known = castingsVolume && density && overflow && loss && heel;
  const result = known
    ? chargeOf({
        castingMm3: castingsVolume.value,
        gatingMm3: gatingVolume?.value ?? 0,
        risersMm3: risersVolume?.value ?? 0,
        solidDensityKgM3: density.value,
        liquidDensityKgM3: liquidDensity?.value ?? Number.NaN,
        overflowKg: overflow.value,
        loss: loss.value / 100,
        heelKg: heel.value,
      })
    : undefined;
  const from = [castingsVolume, density, gatingVolume, risersVolume, overflow].filter((one) => one !== undefined);
  const figure = (
    value: number | undefined,
    unit: Figure['unit'],
    origin: string,
    more: readonly (Figure | undefined)[],
  ) =>
    value === undefined || !Number.isFinite(value)
      ? undefined
      : {
          value,
          unit,
          origin,
          status: weakest([...from, ...more.filter((one) => one !== undefined)].map((one) => one.status)),
        };
  return {
    castings,
    castingsVolume,
    castingsMass: massOf(castingsVolume, density),
    ...gating,
    gatingVolume,
    risersVolume,
    overflow,
    loss,
    heel,
    poured: figure(
      result?.pouredKg,
      'kg',
      'castings, gating and risers by the density of the solid, and the overflow',
      [],
    ),
    charge: figure(result?.chargeKg, 'kg', 'poured and left in the crucible, by one less the loss', [loss, heel]),
    liquid: figure(result?.liquidLitres, 'l', 'poured and left in the crucible, by the density of the liquid', [
      heel,
      liquidDensity,
    ]),
    yield: figure(result && result.yield * 100, '%', 'castings by what is poured', []),
    unknown,
  };
}

const overflowWords = (alloy: PourAlloy | undefined): string =>
  alloy?.family === 'aluminium'
    ? foundryPractice.overflowKg.source
    : `the volume of ${foundryPractice.overflowKg.value} kg of aluminium; ${foundryPractice.overflowKg.source}`;

export const massOf = (volume: Figure | undefined, density: Figure | undefined): Figure | undefined =>
  worked('kg', 'volume by the density of the solid', [volume, density], (mm3, rho) => mm3 * rho * 1e-9);

/**
 * A sprue is always there and must be known. Runner and gates of which nothing at all is written are not there; of which only
 * some is written, the rest is missed. A cup of which nothing is written is filled from the overflow.
 */
function gatingVolumes({ gating }: ReadPour, gates: number, unknown: FoundryUnknown[]) {
  const need = (names: readonly (keyof ReadPour['gating'])[], field = (name: string) => `gating/${name}`): boolean => {
    const missing = names.filter((name) => !gating[name]);
    for (const name of missing) unknown.push({ is: 'field', field: field(name) });
    return missing.length === 0;
  };
  const anyOf = (names: readonly (keyof ReadPour['gating'])[]): boolean => names.some((name) => gating[name]);
  const runnerNames = ['runnerWidth', 'runnerHeight', 'runnerLength'] as const;
  const gateNames = ['gateWidth', 'gateHeight', 'gateLength'] as const;
  need(['sprueHeight', 'sprueTop', 'sprueFoot']);
  if (anyOf(runnerNames)) need(runnerNames);
  if (anyOf(gateNames)) need(gateNames);
  const { sprueHeight, sprueTop, sprueFoot, cup } = gating;
  const box = (a: Figure | undefined, b: Figure | undefined, c: Figure | undefined, count: number) =>
    worked('mm³', 'length by width by height', [a, b, c], (x, y, z) => count * x * y * z);
  return {
    sprue: worked(
      'mm³',
      'a round sprue that tapers',
      [sprueHeight, sprueTop, sprueFoot],
      (h, top, foot) => (Math.PI / 12) * h * (top ** 2 + top * foot + foot ** 2),
    ),
    runner: box(gating.runnerWidth, gating.runnerHeight, gating.runnerLength, 1),
    gates: box(gating.gateWidth, gating.gateHeight, gating.gateLength, gates),
    cup: worked('mm³', 'as written', [cup], (litres) => litres * 1e6),
  };
}

function risersOf({ risers }: ReadPour, unknown: FoundryUnknown[]): Figure | undefined {
  const volumes = risers.map(({ diameter, height }, i) => {
    if (!diameter) unknown.push({ is: 'field', field: `risers/${i}/diameter` });
    if (!height) unknown.push({ is: 'field', field: `risers/${i}/height` });
    return worked('mm³', 'a cylinder', [diameter, height], (d, h) => (Math.PI / 4) * d ** 2 * h);
  });
  return sumOf('mm³', 'all risers', volumes);
}
