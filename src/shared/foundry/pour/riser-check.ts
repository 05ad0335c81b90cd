import type { PartId } from '../../base/ids.ts';
import { foundryPractice } from '../../tables/foundry-practice.ts';
import { type Figure, fromTable, worked } from '../figure.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';
import type { PourInput } from '../pour-input.ts';
import { RISER_EFFICIENCY, RISER_MODULUS_FACTOR, type RiserSize, riserFeeds, riserFor } from '../risers.ts';
import type { FreezingCheck, FreezingZone } from './freezing-check.ts';
import type { PourAlloy } from './pour-alloy.ts';
import type { ReadPour } from './read-pour.ts';
import { type PourVerdict, verdict } from './verdict.ts';

/** A riser that is drawn, and what it feeds. */
export interface RiserCheck {
  /** Place in the pour's list. */
  readonly riser: number;
  readonly part: PartId | undefined;
  readonly zone: FreezingZone | undefined;
  readonly modulus: Figure | undefined;
  readonly volume: Figure | undefined;
  readonly time: Figure | undefined;
  /** By the rule of moduli and by that of volumes. */
  readonly modulusNeeded: Figure | undefined;
  readonly volumeNeeded: Figure | undefined;
}

/** A thick place without a riser, with the riser that would feed it. */
export interface UnfedZone {
  readonly part: PartId;
  readonly zone: FreezingZone;
  /** Cut off by thinner metal before it freezes; false of the one that freezes last of all. */
  readonly isolated: boolean;
  /** Undefined where the metal shrinks as much as a plain riser can give. */
  readonly proposed: { readonly diameter: Figure; readonly height: Figure; readonly by: RiserSize['by'] } | undefined;
}

export interface RisersCheck {
  readonly risers: readonly RiserCheck[];
  readonly unfed: readonly UnfedZone[];
  readonly verdicts: readonly PourVerdict[];
  readonly unknown: readonly FoundryUnknown[];
}

const factorWords = `a riser is to freeze after what it feeds: ${RISER_MODULUS_FACTOR} times its modulus (Campbell, Complete Casting Handbook, from memory)`;
const efficiencyWords = `a plain riser gives ${RISER_EFFICIENCY * 100} % of itself (from memory)`;

/** Risers by both rules, and thick places that have none. */
export function risersCheck(
  input: PourInput,
  read: ReadPour,
  alloy: PourAlloy | undefined,
  freezing: FreezingCheck,
): RisersCheck {
  const unknown: FoundryUnknown[] = [];
  const shrinkage = alloy?.figure('freezingShrinkage');
  const verdicts: PourVerdict[] = [];
  const fed = new Set<FreezingZone>();
  const risers = input.pour.risers.map((record, riser): RiserCheck => {
    if (record.on === undefined) unknown.push({ is: 'field', field: `risers/${riser}/on` });
    const found = record.on === undefined ? undefined : zoneUnder(freezing, record.on);
    if (found) fed.add(found.zone);
    const { diameter, height } = read.risers[riser]!;
    const check = checkRiser(riser, found, diameter, height, shrinkage, freezing.mouldConstant);
    verdicts.push(...riserVerdicts(check, shrinkage));
    return check;
  });
  const unfed = freezing.castings.flatMap(({ part, zones }) =>
    zones
      .filter((zone) => !fed.has(zone))
      .map(
        (zone): UnfedZone => ({
          part,
          zone,
          isolated: zone.neck !== undefined,
          proposed: propose(zone, shrinkage),
        }),
      ),
  );
  for (const { part, zone, isolated, proposed } of unfed) {
    if (!isolated) continue;
    const body = zone.bodies[0];
    verdicts.push(
      verdict('hot-spot', 'caution', {
        about: { part, body },
        has: zone.neck,
        needs: zone.modulus,
        ways: proposed
          ? [{ is: 'riser', body, diameterMm: proposed.diameter.value, heightMm: proposed.height.value }]
          : [],
      }),
    );
  }
  return { risers, unfed, verdicts, unknown };
}

/** The zone with the largest modulus that the body has a part in. */
function zoneUnder(
  { castings }: FreezingCheck,
  body: string,
): { readonly part: PartId; readonly zone: FreezingZone } | undefined {
  for (const { part, zones } of castings) {
    const own =
      zones.find(({ bodies }) => bodies[0] === body) ?? zones.find(({ bodies }) => bodies.some((one) => one === body));
    if (own) return { part, zone: own };
  }
  return undefined;
}

function checkRiser(
  riser: number,
  found: ReturnType<typeof zoneUnder>,
  diameter: Figure | undefined,
  height: Figure | undefined,
  shrinkage: Figure | undefined,
  constant: Figure | undefined,
): RiserCheck {
  const zone = found?.zone;
  const demand = (d: number, h: number, modulusMm: number, fedMm3: number, percent: number) =>
    riserFeeds({ diameterMm: d, heightMm: h }, { modulusMm, fedMm3, shrinkage: percent / 100 });
  const modulus = worked(
    'mm',
    'a cylinder whose foot does not cool',
    [diameter, height],
    (d, h) => demand(d, h, 0, 0, 0).modulusMm,
  );
  return {
    riser,
    part: found?.part,
    zone,
    modulus,
    volume: worked('mm³', 'a cylinder', [diameter, height], (d, h) => (Math.PI / 4) * d ** 2 * h),
    time: worked('s', 'Chvorinov’s rule, t = B M²', [constant, modulus], (b, m) => b * m ** 2),
    modulusNeeded: worked('mm', factorWords, [zone?.modulus], (m) => RISER_MODULUS_FACTOR * m),
    volumeNeeded: worked('mm³', efficiencyWords, [zone?.volume, shrinkage], (mm3, percent) => {
      const share = percent / 100;
      return share < RISER_EFFICIENCY ? (share * mm3) / (RISER_EFFICIENCY - share) : Number.NaN;
    }),
  };
}

function riserVerdicts(check: RiserCheck, shrinkage: Figure | undefined): readonly PourVerdict[] {
  const { riser, part, zone, modulus, volume, modulusNeeded, volumeNeeded } = check;
  const body = zone?.bodies[0];
  const about = { riser, part, body };
  const size = zone && propose(zone, shrinkage);
  const ways = size
    ? [{ is: 'riser' as const, body, diameterMm: size.diameter.value, heightMm: size.height.value }]
    : [];
  const verdicts: PourVerdict[] = [];
  const judge = (
    code: 'riser-freezes-late' | 'riser-holds-enough',
    has: Figure | undefined,
    needs: Figure | undefined,
  ) => {
    if (!has || !needs) return;
    const state = has.value >= needs.value * (1 - 1e-9) ? 'clear' : code === 'riser-freezes-late' ? 'stop' : 'caution';
    verdicts.push(verdict(code, state, { about, has, needs, ways }));
  };
  judge('riser-freezes-late', modulus, modulusNeeded);
  judge('riser-holds-enough', volume, volumeNeeded);
  return verdicts;
}

function propose(zone: FreezingZone, shrinkage: Figure | undefined): UnfedZone['proposed'] {
  const slenderness = fromTable(foundryPractice.riserSlenderness, '');
  const size =
    shrinkage &&
    riserFor({
      modulusMm: zone.modulus.value,
      fedMm3: zone.volume.value,
      shrinkage: shrinkage.value / 100,
      slenderness: slenderness.value,
    });
  const diameter = worked(
    'mm',
    size?.by === 'volume' ? efficiencyWords : factorWords,
    [zone.modulus, shrinkage, slenderness],
    () => size?.diameterMm ?? Number.NaN,
  );
  const height = worked(
    'mm',
    `${slenderness.value} times as high as wide; ${slenderness.origin}`,
    [diameter, slenderness],
    (d, n) => d * n,
  );
  return size && diameter && height ? { diameter, height, by: size.by } : undefined;
}
