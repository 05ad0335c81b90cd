import type { BodyId, PartId } from '../../base/ids.ts';
import type { Vec3 } from '../../solid/placed.ts';
import { minimumWall } from '../../tables/minimum-wall.ts';
import { patternPractice } from '../../tables/pattern-practice.ts';
import { drawn, type Figure, fromTable, weakest, worked } from '../figure.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';
import { freezingTime, mouldConstantOf, SAND_K_RHO_C } from '../freezing.ts';
import { isFoam } from '../moulding.ts';
import type { CastingInput, PourInput } from '../pour-input.ts';
import type { PourAlloy } from './pour-alloy.ts';
import { type PourVerdict, verdict } from './verdict.ts';

/** A body of a casting in the order in which it freezes. */
export interface FreezingBody {
  readonly body: BodyId;
  /** Under half of its surface. */
  readonly modulus: Figure;
  readonly time: Figure | undefined;
}

/** A place that freezes last among what lies about it. */
export interface FreezingZone {
  /** Place in the list of the casting's zones. */
  readonly zone: number;
  readonly at: Vec3;
  readonly bodies: readonly BodyId[];
  readonly modulus: Figure;
  readonly time: Figure | undefined;
  /** All metal that freezes towards it. */
  readonly volume: Figure;
  /** The thickest way to a thicker zone; undefined of the one that freezes last of all. */
  readonly neck: Figure | undefined;
  readonly neckTime: Figure | undefined;
}

export interface FreezingCasting {
  readonly part: PartId;
  /** First to freeze first. */
  readonly order: readonly FreezingBody[];
  /** Last to freeze first. */
  readonly zones: readonly FreezingZone[];
  readonly thinnest:
    | {
        readonly thickness: Figure;
        readonly modulus: Figure;
        readonly time: Figure | undefined;
        readonly at: Vec3;
        readonly body: BodyId;
      }
    | undefined;
}

export interface FreezingCheck {
  /** t = B M². */
  readonly mouldConstant: Figure | undefined;
  readonly castings: readonly FreezingCasting[];
  readonly verdicts: readonly PourVerdict[];
  readonly unknown: readonly FoundryUnknown[];
}

/** In what order the metal freezes, and how long it takes: a figure of order, for comparing sections. */
export function freezingCheck(
  input: PourInput,
  alloy: PourAlloy | undefined,
  temperature: Figure | undefined,
  ambient: Figure,
): FreezingCheck {
  const unknown: FoundryUnknown[] = [];
  const constant = mouldConstantFigure(alloy, temperature, ambient);
  const time = (modulus: Figure): Figure | undefined =>
    worked('s', 'Chvorinov’s rule, t = B M²', [constant, modulus], (b, m) => freezingTime(m, b));
  const verdicts: PourVerdict[] = [];
  const castings = input.pour.castings.flatMap(({ part }): FreezingCasting[] => {
    const casting = input.castingOf(part);
    const sections = casting?.sections;
    if (!casting || !sections) {
      unknown.push({ is: 'sections', part });
      return [];
    }
    const { thinnest } = sections;
    const thickness = thinnest && drawn(thinnest.thicknessMm, 'mm', 'the thinnest wall, square to its faces');
    const thinModulus = thinnest && drawn(thinnest.modulusMm, 'mm', 'volume by surface of the metal there');
    if (thickness) verdicts.push(...thinVerdicts(casting, thickness, thinnest.body, alloy));
    return [
      {
        part,
        order: sections.bodies.map(({ body, usualMm }) => {
          const modulus = drawn(
            usualMm,
            'mm',
            'volume by surface of the metal within reach, under half of its surface',
          );
          return { body, modulus, time: time(modulus) };
        }),
        zones: sections.zones.map((zone, i) => {
          const modulus = drawn(zone.modulusMm, 'mm', 'volume by surface of the metal within reach');
          const neck =
            zone.neckMm === undefined ? undefined : drawn(zone.neckMm, 'mm', 'the thickest way to thicker metal');
          return {
            zone: i,
            at: zone.at,
            bodies: zone.bodies,
            modulus,
            time: time(modulus),
            volume: drawn(zone.volumeMm3, 'mm³', 'metal that freezes towards it'),
            neck,
            neckTime: neck && time(neck),
          };
        }),
        thinnest: thinnest &&
          thickness &&
          thinModulus && {
            thickness,
            modulus: thinModulus,
            time: time(thinModulus),
            at: thinnest.at,
            body: thinnest.body,
          },
      },
    ];
  });
  return { mouldConstant: constant, castings, verdicts, unknown };
}

function mouldConstantFigure(
  alloy: PourAlloy | undefined,
  temperature: Figure | undefined,
  ambient: Figure,
): Figure | undefined {
  const melting = alloy?.thermal();
  const density = alloy?.figure('liquidDensityKgM3');
  if (!melting || !density || !temperature) return undefined;
  const { thermal, from } = melting;
  const value = mouldConstantOf({
    densityKgM3: density.value,
    latentKJKg: thermal.latentKJKg,
    heatKJKgK: thermal.liquidHeatKJKgK,
    freezesC: thermal.liquidusC,
    pourC: temperature.value,
    ambientC: ambient.value,
    mouldKRhoC: SAND_K_RHO_C,
  });
  return {
    value,
    unit: 's/mm²',
    origin: 'heat of the metal against conduction into dry silica sand (its k ρ c from memory)',
    status: weakest(['from memory', density.status, temperature.status, ...from.map(({ status }) => status)]),
  };
}

/** What runs full: by the alloy, and by how thin foam can be handled. */
function thinVerdicts(
  { part, casting }: CastingInput,
  thickness: Figure,
  body: BodyId,
  alloy: PourAlloy | undefined,
): readonly PourVerdict[] {
  const limits: Figure[] = [];
  const wall = minimumWall(part.material) ?? (alloy && minimumWall(alloy.name));
  if (wall) limits.push(fromTable({ value: wall.leastMm, status: wall.status, source: wall.source }, 'mm'));
  if (isFoam(casting?.moulding)) limits.push(fromTable(patternPractice.leastSection, 'mm'));
  if (limits.length === 0) return [];
  const needs = limits.reduce((most, one) => (one.value > most.value ? one : most));
  const about = { part: part.id, body };
  const state =
    thickness.value >= needs.value - 1e-6 ? 'clear' : wall && thickness.value < wall.leastMm ? 'stop' : 'caution';
  return [verdict('section-thin', state, { about, has: thickness, needs, ways: [{ is: 'wall', mm: needs.value }] })];
}
