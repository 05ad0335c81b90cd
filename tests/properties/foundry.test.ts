import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { allOf } from '../../src/shared/base/pieces.ts';
import type { Pour } from '../../src/shared/build/pour.ts';
import { drawnCasting } from '../../src/shared/foundry/casting-solid.ts';
import { chargeOf, meltsFor } from '../../src/shared/foundry/charge.ts';
import { dryingOf } from '../../src/shared/foundry/drying.ts';
import { mouldConstantOf } from '../../src/shared/foundry/freezing.ts';
import { cooledBy, heatGiven, heatToFraction, heatToPour, type Thermal } from '../../src/shared/foundry/heat.ts';
import { sectionsOf } from '../../src/shared/foundry/hot-spots.ts';
import { insertBalance, leastPreheat, leastPreheatForFraction } from '../../src/shared/foundry/inserts.ts';
import { checkPour, type PourCheck } from '../../src/shared/foundry/pour-check.ts';
import { riserFeeds, riserFor } from '../../src/shared/foundry/risers.ts';
import type { Kernel } from '../../src/shared/solid/manifold/kernel.ts';
import { loadKernel } from '../../src/shared/solid/manifold/load-kernel.ts';
import { block, cylinder, solidOf, THE_PART } from '../support/placed-bodies.ts';
import { machineOf, type PourSketch, pourBody, sketchPour, sprue } from '../support/sketch-pour.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

/** Alloys with and without a freezing range. */
const alloy: fc.Arbitrary<Thermal> = fc
  .tuple(
    between(300, 1200),
    fc.oneof(fc.constant(0), between(0, 200)),
    between(80, 450),
    between(0.3, 1),
    between(0.3, 1.2),
  )
  .map(([solidusC, range, latentKJKg, solidHeatKJKgK, liquidHeatKJKgK]) => ({
    solidusC,
    liquidusC: solidusC + range,
    latentKJKg,
    solidHeatKJKgK,
    liquidHeatKJKgK,
  }));
const insert = fc.record({
  metal: alloy,
  superheat: between(5, 250),
  metalKg: between(0.01, 20),
  insertKg: between(0, 20),
  insertC: between(-20, 300),
  insertHeat: between(0.3, 1),
});
type InsertGiven = typeof insert extends fc.Arbitrary<infer T> ? T : never;
const balance = ({ metal, superheat, ...masses }: InsertGiven) =>
  insertBalance(metal, { ...masses, pourC: metal.liquidusC + superheat });

describe('heat', () => {
  test('what cooling gives, heating took; hotter metal holds more; the share that is frozen follows from the heat given', () => {
    fc.assert(
      fc.property(alloy, between(1, 300), between(0, 1), (metal, superheat, share) => {
        const pourC = metal.liquidusC + superheat;
        expect(heatGiven(metal, pourC, 20)).toBeCloseTo(heatToPour(metal, 20, pourC), 6);
        expect(heatToPour(metal, 20, pourC + 1)).toBeGreaterThan(heatToPour(metal, 20, pourC));
        expect(cooledBy(metal, pourC, heatToFraction(metal, pourC, share)).solidFraction).toBeCloseTo(share, 6);
      }),
    );
  });
});

describe('inserts', () => {
  test('hotter metal or a warmer insert never raises what is frozen; a heavier insert or less metal never lowers it', () => {
    fc.assert(
      fc.property(insert, between(0, 100), between(1, 3), (given, more, times) => {
        const now = balance(given);
        expect(now.solidFraction).toBeGreaterThanOrEqual(0);
        expect(now.solidFraction).toBeLessThanOrEqual(1);
        const eps = 1e-6;
        expect(balance({ ...given, superheat: given.superheat + more }).solidFraction).toBeLessThanOrEqual(
          now.solidFraction + eps,
        );
        expect(balance({ ...given, insertC: given.insertC + more }).solidFraction).toBeLessThanOrEqual(
          now.solidFraction + eps,
        );
        expect(balance({ ...given, insertKg: given.insertKg * times }).solidFraction).toBeGreaterThanOrEqual(
          now.solidFraction - eps,
        );
        expect(balance({ ...given, metalKg: given.metalKg / times }).solidFraction).toBeGreaterThanOrEqual(
          now.solidFraction - eps,
        );
      }),
      { numRuns: 300 },
    );
  });
  test('metal is wholly liquid exactly where heat is to spare', () => {
    fc.assert(
      fc.property(insert, (given) => {
        const { marginKJ, solidFraction, superheatK } = balance(given);
        if (marginKJ > 1e-6) expect(solidFraction).toBe(0);
        if (marginKJ < -1e-6 * given.metalKg) expect(solidFraction).toBeGreaterThan(0);
        if (solidFraction > 1e-9) expect(superheatK).toBeLessThan(1e-6);
      }),
      { numRuns: 300 },
    );
  });
  test('an insert as warm as is asked does what is asked, and ten degrees colder does not', () => {
    fc.assert(
      fc.property(insert, between(0.01, 0.9), between(1, 40), (given, share, spare) => {
        fc.pre(given.insertKg > 0.05 * given.metalKg && spare < given.superheat);
        const { metal, superheat, insertC: _, ...masses } = given;
        const whole = { ...masses, pourC: metal.liquidusC + superheat };
        const forShare = leastPreheatForFraction(metal, whole, share);
        expect(insertBalance(metal, { ...whole, insertC: forShare }).solidFraction).toBeCloseTo(share, 5);
        expect(insertBalance(metal, { ...whole, insertC: forShare - 10 }).solidFraction).toBeGreaterThan(share);
        const forRun = leastPreheat(metal, whole, spare);
        expect(insertBalance(metal, { ...whole, insertC: forRun }).superheatK).toBeCloseTo(spare, 5);
      }),
      { numRuns: 300 },
    );
  });
});

describe('metal, freezing, risers', () => {
  const charge = fc.record({
    castingMm3: between(1, 1e7),
    gatingMm3: between(0, 1e6),
    risersMm3: between(0, 1e6),
    solidDensityKgM3: between(2000, 9000),
    liquidDensityKgM3: between(2000, 9000),
    overflowKg: between(0, 2),
    loss: between(0, 0.3),
    heelKg: between(0, 2),
  });
  test('more of anything never needs less metal, nor fewer melts', () => {
    fc.assert(
      fc.property(
        charge,
        fc.constantFrom('castingMm3', 'gatingMm3', 'risersMm3', 'overflowKg', 'heelKg'),
        between(1, 2),
        (given, key, times) => {
          const [now, more] = [chargeOf(given), chargeOf({ ...given, [key]: given[key] * times })];
          expect(more.chargeKg).toBeGreaterThanOrEqual(now.chargeKg - 1e-12);
          expect(more.liquidLitres).toBeGreaterThanOrEqual(now.liquidLitres - 1e-12);
          expect(meltsFor(more.liquidLitres, 1)).toBeGreaterThanOrEqual(meltsFor(now.liquidLitres, 1));
          // nothing is made or lost: what goes in comes out as poured, heel and dross
          expect(now.chargeKg * (1 - given.loss)).toBeCloseTo(now.pouredKg + given.heelKg, 9);
        },
      ),
    );
  });
  test('hotter metal and a warmer mould freeze later', () => {
    fc.assert(
      fc.property(alloy, between(1, 200), between(1, 50), (metal, superheat, more) => {
        const heat = {
          densityKgM3: 2400,
          latentKJKg: metal.latentKJKg,
          heatKJKgK: metal.liquidHeatKJKgK,
          freezesC: metal.liquidusC,
          pourC: metal.liquidusC + superheat,
          ambientC: 20,
          mouldKRhoC: 1e6,
        };
        const b = mouldConstantOf(heat);
        expect(mouldConstantOf({ ...heat, pourC: heat.pourC + more })).toBeGreaterThan(b);
        expect(mouldConstantOf({ ...heat, ambientC: 20 + more })).toBeGreaterThan(b);
      }),
    );
  });
  test('a proposed riser feeds, and one that feeds more is no smaller', () => {
    fc.assert(
      fc.property(
        between(1, 40),
        between(1e3, 1e7),
        between(0.01, 0.12),
        between(0.8, 2.5),
        between(1, 3),
        (modulusMm, fedMm3, shrinkage, slenderness, times) => {
          const demand = { modulusMm, fedMm3, shrinkage, slenderness };
          const size = riserFor(demand)!;
          expect(riserFeeds(size, demand)).toMatchObject({ lateEnough: true, largeEnough: true });
          expect(riserFor({ ...demand, fedMm3: fedMm3 * times })!.volumeMm3).toBeGreaterThanOrEqual(
            size.volumeMm3 * (1 - 1e-12),
          );
          expect(riserFor({ ...demand, modulusMm: modulusMm * times })!.volumeMm3).toBeGreaterThanOrEqual(
            size.volumeMm3 * (1 - 1e-12),
          );
        },
      ),
    );
  });
});

describe('drying', () => {
  test('the order in which weighings are given does not matter, and heavier throughout is never dry when lighter is not', () => {
    const log = fc.array(fc.record({ hours: between(0, 60), massKg: between(0.3, 0.6) }), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(log, fc.infiniteStream(between(0, 1)), (weighings, chance) => {
        const rule = { bareKg: 0.1, resolutionKg: 0.0001, share: 0.001, leastHours: 2 };
        const shuffled = weighings
          .map((one) => ({ one, at: chance.next().value }))
          .sort((a, b) => a.at - b.at)
          .map(({ one }) => one);
        const times = new Set(weighings.map(({ hours }) => hours));
        fc.pre(times.size === weighings.length);
        expect(dryingOf({ ...rule, weighings: shuffled })).toEqual(dryingOf({ ...rule, weighings }));
      }),
    );
  });
});

describe('sections', () => {
  const size = fc.integer({ min: 6, max: 60 });
  test('volume and surface of the zones are those of the casting; moduli lie between its thinnest and its thickest', () => {
    fc.assert(
      fc.property(
        fc.tuple(size, size, size),
        fc.tuple(size, size),
        fc.integer({ min: -20, max: 50 }),
        ([a, b, c], [r, h], at) => {
          const { solids } = solidOf(kernel, [
            { shape: block([0, a], [0, b], [0, c]) },
            { shape: cylinder('Y', [at, c / 2], [b / 2, b / 2 + h], r / 2) },
          ]);
          const solid = drawnCasting(THE_PART, solids)!;
          const { zones, bodies } = allOf(sectionsOf(solid, 3_000)).sections;
          const sum = (list: readonly number[]) => list.reduce((all, one) => all + one, 0);
          const volume = sum(zones.map(({ volumeMm3 }) => volumeMm3));
          expect(volume / solid.volumeMm3).toBeGreaterThan(0.99);
          expect(volume / solid.volumeMm3).toBeLessThan(1.01);
          expect(sum(zones.map(({ areaMm2 }) => areaMm2)) / solid.areaMm2).toBeCloseTo(1, 1);
          // no metal is farther in than the largest ball, and none has more volume by surface than that
          const widest = Math.min(a, b, c) / 2 + r / 2;
          for (const zone of zones) {
            expect(zone.modulusMm).toBeGreaterThan(0);
            expect(zone.modulusMm).toBeLessThan(widest * 1.2);
            if (zone.neckMm !== undefined) expect(zone.neckMm).toBeLessThan(zone.modulusMm);
          }
          for (const body of bodies) expect(body.thinMm).toBeLessThanOrEqual(body.thickMm);
        },
      ),
      { numRuns: 25 },
    );
  });
});

describe('pours', () => {
  const column = {
    name: 'pillar',
    bodies: [{ shape: block([-50, 50], [-40, 40], [0, 8]) }, { shape: cylinder('Z', [0, 0], [0, 70], 24) }],
  };
  const pot = machineOf('pot', 'crucible', { capacity: '2 l' });
  const made = (more: Partial<Pour>, preheat: number, diameter: number): PourCheck => {
    const sketch: PourSketch = {
      castings: [column],
      inserts: [
        {
          name: `arbor${diameter}`,
          diameter,
          length: 70,
          record: { around: pourBody('pillar', 1), preheat: `${preheat}` },
        },
      ],
      machines: [pot],
      pour: { gating: sprue, crucible: pot.id, ambient: '20', ...more },
    };
    return checkPour(sketchPour(kernel, sketch));
  };
  const rank = { clear: 0, unknown: 1, caution: 2, stop: 3 } as const;
  const cold = (check: PourCheck) => {
    const found = check.verdicts.find(({ code }) => code === 'insert-cold')!;
    return { found, rank: rank[found.state], solid: check.inserts[0]!.solidFraction!.value };
  };
  test('hotter, warmer and lighter never make an insert worse; each way out that is named does clear it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 640, max: 780 }),
        fc.integer({ min: 10, max: 400 }),
        fc.constantFrom(6, 10, 14, 20, 26),
        fc.integer({ min: 0, max: 60 }),
        (temperature, preheat, diameter, more) => {
          const at = (t: number, p: number, d: number) => cold(made({ temperature: `${t}` }, p, d));
          const now = at(temperature, preheat, diameter);
          expect(at(temperature + more, preheat, diameter).solid).toBeLessThanOrEqual(now.solid + 1e-9);
          expect(at(temperature + more, preheat, diameter).rank).toBeLessThanOrEqual(now.rank);
          expect(at(temperature, preheat + more, diameter).rank).toBeLessThanOrEqual(now.rank);
          expect(at(temperature, preheat, 6).rank).toBeLessThanOrEqual(now.rank);
          for (const way of now.found.ways) {
            if (way.is === 'preheat') expect(at(temperature, way.toC, diameter).found.state).toBe('clear');
            if (way.is === 'hotter') expect(at(way.toC, preheat, diameter).found.state).toBe('clear');
            if (way.is === 'preheat and hotter') expect(at(way.toC, way.preheatC, diameter).found.state).toBe('clear');
          }
        },
      ),
      { numRuns: 60 },
    );
  });
  test('a pour is worked out the same each time, and nothing in it is no number', () => {
    const walk = (value: unknown, path: string): void => {
      if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${path} is ${value}`);
      if (typeof value === 'object' && value)
        for (const [key, one] of Object.entries(value)) walk(one, `${path}/${key}`);
    };
    fc.assert(
      fc.property(
        fc.constantFrom('', '700', '5', '900 °C', 'warm'),
        fc.constantFrom('', '0', '3 %', '150'),
        fc.constantFrom('', '10 mm', 'none'),
        fc.constantFrom('A356', 'bronze', 'ZA-12', 'grey iron', 'Aluminium', ''),
        (temperature, loss, sprueFoot, alloy) => {
          const check = made({ temperature, loss, alloy, gating: { ...sprue, sprueFoot } }, 20, 14);
          walk(check, '');
          expect(made({ temperature, loss, alloy, gating: { ...sprue, sprueFoot } }, 20, 14)).toEqual(check);
        },
      ),
      { numRuns: 80 },
    );
  });
});
