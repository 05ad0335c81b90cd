import { foundryPractice } from '../../tables/foundry-practice.ts';
import { drawn, type Figure, fromTable, sumOf, worked } from '../figure.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';
import { effectiveHead, fallSpeed, fillTime, GATE_SPEED_LIMIT, leastGateArea, SPRUE_DISCHARGE } from '../gating.ts';
import type { PourInput } from '../pour-input.ts';
import type { ChargeCheck } from './charge-check.ts';
import type { FreezingCheck } from './freezing-check.ts';
import { chokeFor, type GatingProposal, positive, proposeGating, wantedTime } from './gating-proposal.ts';
import type { PourAlloy } from './pour-alloy.ts';
import type { ReadPour } from './read-pour.ts';
import type { Standing } from './standing.ts';
import { type PourVerdict, verdict } from './verdict.ts';

export interface GatingCheck {
  /** Level in the cup over the lowest point of the casting that stands highest over the gate. */
  readonly level: Figure | undefined;
  readonly effectiveHead: Figure | undefined;
  /** Speed at the foot of the sprue. */
  readonly footSpeed: Figure | undefined;
  readonly chokeArea: Figure | undefined;
  readonly gatesArea: Figure | undefined;
  readonly gateSpeed: Figure | undefined;
  /** All that has to run in. */
  readonly volume: Figure | undefined;
  /** Through the choke, and by the front in the foam: the slower of both is the time to fill. */
  readonly chokeTime: Figure | undefined;
  readonly foamTime: Figure | undefined;
  readonly fillTime: Figure | undefined;
  /** Time in which the thinnest section freezes. */
  readonly thinnestTime: Figure | undefined;
  readonly proposal: GatingProposal | undefined;
  readonly verdicts: readonly PourVerdict[];
  readonly unknown: readonly FoundryUnknown[];
}

/** Level in the cup over the lowest point of one casting; undefined where the sprue or the parting is not known. */
export function levelOver(input: PourInput, read: ReadPour, { heightMm, partingMm }: Standing): Figure | undefined {
  const { sprueHeight } = read.gating;
  const { spot } = input.pour.gating;
  const gate =
    spot === 'top'
      ? drawn(heightMm, 'mm', 'height of the casting')
      : spot === 'bottom'
        ? drawn(0, 'mm', 'the lowest point of the casting')
        : partingMm === undefined
          ? undefined
          : drawn(partingMm, 'mm', 'height of the parting');
  return worked('mm', 'height of the gate and of the sprue', [gate, sprueHeight], (at, sprue) => at + sprue);
}

export function gatingCheck(
  input: PourInput,
  read: ReadPour,
  alloy: PourAlloy | undefined,
  charge: ChargeCheck,
  freezing: FreezingCheck,
  standings: readonly Standing[],
): GatingCheck {
  const unknown: FoundryUnknown[] = [];
  const { gating } = read;
  const { spot, gates, hollow } = input.pour.gating;
  const tallest = standings.reduce<Standing | undefined>((a, b) => (a && a.heightMm >= b.heightMm ? a : b), undefined);
  if (tallest && spot === 'parting' && tallest.partingMm === undefined) unknown.push({ is: 'field', field: 'parting' });
  for (const name of ['sprueHeight', 'sprueFoot'] as const) {
    if (!gating[name]) unknown.push({ is: 'field', field: `gating/${name}` });
  }
  const level = tallest && levelOver(input, read, tallest);
  const height = tallest && drawn(tallest.heightMm, 'mm', 'height of the casting');
  const above =
    tallest && (spot === 'parting' ? Math.max(0, tallest.heightMm - (tallest.partingMm ?? 0)) : tallest.heightMm);
  const head = worked(
    'mm',
    'mean head while the mould fills (from memory: Heine, Loper and Rosenthal)',
    [gating.sprueHeight, height, level],
    (sprue, c) => effectiveHead(spot, sprue, c, above ?? 0),
  );
  const choke = worked('mm²', 'foot of the sprue', [gating.sprueFoot], (d) => (Math.PI / 4) * d ** 2);
  const volume = sumOf('mm³', 'castings, gating, risers and the overflow', [
    charge.castingsVolume,
    charge.gatingVolume,
    charge.risersVolume,
    worked('mm³', '', [charge.overflow, alloy?.figure('solidDensityKgM3')], (kg, rho) => (kg / rho) * 1e9),
  ]);
  const chokeTime = worked(
    's',
    `through the choke, ${SPRUE_DISCHARGE} of a free fall (from memory)`,
    [volume, choke, positive(head)],
    (mm3, area, h) => fillTime(mm3, area, h),
  );
  const path =
    tallest && (spot === 'parting' ? Math.max(above ?? 0, tallest.heightMm - (above ?? 0)) : tallest.heightMm);
  const front = fromTable(foundryPractice.foamFrontMmS, 'mm/s');
  const foamTime = tallest?.foam
    ? worked(
        's',
        `the front eats its way through ${Math.round(path ?? 0)} mm of foam; ${front.origin}`,
        [height, front],
        (_, speed) => (path ?? 0) / speed,
      )
    : undefined;
  const time = slower(chokeTime, foamTime);
  const thinnestTime = freezing.castings
    .map(({ thinnest, order }) => thinnest?.time ?? order[0]?.time)
    .reduce<Figure | undefined>((a, b) => (!a || (b && b.value < a.value) ? b : a), undefined);
  const gatesArea = worked('mm²', `${gates} gates`, [gating.gateWidth, gating.gateHeight], (w, h) => gates * w * h);
  const gateSpeed = worked(
    'mm/s',
    'what runs in by the time and the area of the gates',
    [volume, time, positive(gatesArea)],
    (mm3, s, area) => mm3 / s / area,
  );
  const isThroughFoam = tallest?.foam === true && !hollow;
  return {
    level,
    effectiveHead: head,
    footSpeed: worked('mm/s', 'free fall from the level in the cup', [gating.sprueHeight], fallSpeed),
    chokeArea: choke,
    gatesArea,
    gateSpeed,
    volume,
    chokeTime,
    foamTime,
    fillTime: time,
    thinnestTime,
    proposal: proposeGating(volume, head, foamTime, thinnestTime),
    verdicts: [
      ...headVerdict(level, height),
      ...timeVerdict(time, thinnestTime, volume, head, foamTime),
      ...(isThroughFoam ? [] : speedVerdict(gateSpeed, volume, time)),
    ],
    unknown,
  };
}

const slower = (a: Figure | undefined, b: Figure | undefined): Figure | undefined =>
  a && b ? (a.value >= b.value ? a : b) : a;

function headVerdict(level: Figure | undefined, height: Figure | undefined): readonly PourVerdict[] {
  if (!level || !height) return [];
  const state = level.value > height.value ? 'clear' : 'stop';
  return [verdict('head', state, { has: level, needs: height, ways: [{ is: 'sprue', heightMm: height.value }] })];
}

function timeVerdict(
  time: Figure | undefined,
  thinnestTime: Figure | undefined,
  volume: Figure | undefined,
  head: Figure | undefined,
  foamTime: Figure | undefined,
): readonly PourVerdict[] {
  if (!time || !thinnestTime) return [];
  const needs = wantedTime(thinnestTime, undefined);
  if (!needs) return [];
  const state = time.value <= needs.value * (1 + 1e-9) ? 'clear' : time.value < thinnestTime.value ? 'caution' : 'stop';
  // A wider choke is of no use where the foam sets the pace.
  const area = foamTime && foamTime.value >= needs.value ? undefined : chokeFor(volume, needs, head);
  return [
    verdict('fill-time', state, {
      has: time,
      needs,
      ways: area ? [{ is: 'choke', diameterMm: Math.sqrt((4 * area.value) / Math.PI) }] : [],
    }),
  ];
}

function speedVerdict(
  speed: Figure | undefined,
  volume: Figure | undefined,
  time: Figure | undefined,
): readonly PourVerdict[] {
  if (!speed || !volume || !time) return [];
  const needs: Figure = {
    value: GATE_SPEED_LIMIT,
    unit: 'mm/s',
    origin:
      'liquid that forms a film is torn up above about 0.5 m/s (Runyoro, Boutorabi and Campbell 1992, from memory)',
    status: 'from memory',
  };
  const state = speed.value <= needs.value ? 'clear' : 'caution';
  const areaMm2 = leastGateArea(volume.value / time.value);
  return [verdict('gate-speed', state, { has: speed, needs, ways: [{ is: 'gates', areaMm2 }] })];
}
