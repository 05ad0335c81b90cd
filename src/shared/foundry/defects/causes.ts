import { formatNumber } from '../../quantity/format.ts';
import { foundryPractice } from '../../tables/foundry-practice.ts';
import type { InsertCheck } from '../pour/insert-check.ts';
import type { PourVerdictCode } from '../pour/verdict.ts';
import type { PourCheck } from '../pour-check.ts';

/** How much a pour's own figures speak for a cause, 0 against it … 1 strongly for it, and in what words. */
export interface Weighed {
  readonly weight: number;
  /** A clause without a capital and a stop, to be joined with others: `poured 25 K under the band`. */
  readonly because: string;
}

/** What a cause is weighed by: the pour worked out as it was really done, and the names of its parts and bodies. */
export interface Evidence {
  readonly check: PourCheck;
  nameOf(id: string): string;
}

/** Undefined: the figures say nothing of it. */
export type Weigh = (evidence: Evidence) => Weighed | undefined;

/** 0 up to `from`, 1 from `to` on, evenly between; `from` may be the larger. All such bounds here: common practice, no source. */
const ramp = (value: number, from: number, to: number): number =>
  Math.min(1, Math.max(0, (value - from) / (to - from)));

const whole = (value: number): string => formatNumber(value, 0);
const tenths = (value: number): string => formatNumber(value, 1);

const stateOf = ({ check }: Evidence, code: PourVerdictCode) => {
  const found = check.verdicts.filter((one) => one.code === code);
  return found.find(({ state }) => state === 'stop') ?? found.find(({ state }) => state === 'caution') ?? found[0];
};

/** Of a temperature that was written; one that is only proposed says nothing of a pour. */
const pouredAt = ({ check: { temperature } }: Evidence): number | undefined =>
  temperature.isProposed ? undefined : temperature.chosen?.value;

export const metalCold: Weigh = (evidence) => {
  const [at, least] = [pouredAt(evidence), evidence.check.temperature.least?.value];
  if (at === undefined || least === undefined) return undefined;
  const under = least - at;
  const because =
    under >= 0.5
      ? `poured ${whole(under)} K under the band`
      : `poured ${whole(-under)} K over the lower end of the band`;
  return { weight: ramp(under, -20, 30), because };
};

export const metalHot: Weigh = (evidence) => {
  const [at, most] = [pouredAt(evidence), evidence.check.temperature.most?.value];
  if (at === undefined || most === undefined) return undefined;
  const over = at - most;
  const because =
    over >= 0.5 ? `poured ${whole(over)} K over the band` : `poured ${whole(-over)} K under the upper end of the band`;
  return { weight: ramp(over, -15, 40), because };
};

export const filledSlowly: Weigh = ({ check: { gating, journal } }) => {
  const [time, freezes] = [journal?.fillSeconds ?? gating.fillTime, gating.thinnestTime];
  if (!time || !freezes) return undefined;
  return {
    weight: ramp(time.value / freezes.value, foundryPractice.fillShare.value, 0.9),
    because: `filled in ${tenths(time.value)} s, while the thinnest section freezes in ${whole(freezes.value)} s`,
  };
};

export const gatesFast: Weigh = ({ check: { gating, foam } }) => {
  const speed = gating.gateSpeed;
  if (!speed || foam) return undefined;
  return {
    weight: ramp(speed.value, 450, 1000),
    because: `the metal came through the gates at ${tenths(speed.value / 1000)} m/s`,
  };
};

/** The insert that cools its metal most. */
const coldest = ({ check }: Evidence): InsertCheck | undefined =>
  check.inserts
    .filter(({ solidFraction }) => solidFraction)
    .sort(
      (a, b) =>
        b.solidFraction!.value - a.solidFraction!.value || (a.superheat?.value ?? 0) - (b.superheat?.value ?? 0),
    )[0];

export const insertCold: Weigh = (evidence) => {
  const insert = coldest(evidence);
  const { mass, preheat, solidFraction, superheat, around, material } = insert ?? {};
  if (!mass || !preheat || !solidFraction || !superheat) return undefined;
  const what = `${formatNumber(mass.value, 2)} kg of ${preheat.value < 60 ? 'cold ' : ''}${material || 'metal'}`;
  const where = around === undefined ? '' : ` in ${evidence.nameOf(around)}`;
  if (solidFraction.value > 0) {
    const because = `${what}${where}, the metal round it ${whole(100 * solidFraction.value)} % frozen`;
    return { weight: 0.6 + 0.4 * ramp(solidFraction.value, 0, 0.2), because };
  }
  const spare = foundryPractice.superheatToRunK.value;
  return {
    weight: 0.5 * ramp(superheat.value, 3 * spare, 0),
    because: `${what}${where} left the metal ${whole(superheat.value)} K over its liquidus`,
  };
};

export const insertHeavy: Weigh = (evidence) => {
  const insert = coldest(evidence);
  if (!insert?.ratio || !insert.mass || !insert.metal) return undefined;
  return {
    weight: ramp(insert.ratio.value, 0.2, 0.9),
    because: `${formatNumber(insert.mass.value, 2)} kg of insert in ${formatNumber(insert.metal.value, 2)} kg of metal`,
  };
};

export const noFusion: Weigh = (evidence) => {
  const insert = coldest(evidence);
  if (!insert?.contact || insert.fuses === undefined) return undefined;
  const because = `at first touch the faces stood at ${whole(insert.contact.value)} °C, ${insert.fuses ? 'over' : 'under'} the solidus`;
  return { weight: insert.fuses ? 0.1 : 0.6, because };
};

export const coatingDamp: Weigh = ({ check: { coatings } }) => {
  const damp = coatings.find(({ drying }) => drying.gate !== 'dry') ?? coatings[0];
  if (!damp) return undefined;
  const { drying } = damp;
  const loss = drying.drying?.lastShare;
  const lost = loss === undefined ? '' : `, ${formatNumber(loss * 100, 2)} % lost in the last interval`;
  if (drying.gate !== 'dry') return { weight: 0.9, because: `the coating was not proved dry${lost}` };
  return drying.plaster
    ? { weight: 0.6, because: 'the coating held plaster with bound water' }
    : { weight: 0, because: 'the coating weighed constant' };
};

export const foamHeavy: Weigh = ({ check: { foam } }) => {
  if (!foam?.gas || foam.density.status !== 'written') return undefined;
  return {
    weight: ramp(foam.density.value, 18, 32),
    because: `foam of ${whole(foam.density.value)} kg/m³ gave off ${whole(foam.gas.value)} l of gas`,
  };
};

export const foamCools: Weigh = ({ check: { foam } }) =>
  foam?.cooling && {
    weight: 0.5 * ramp(foam.cooling.value, 5, 25),
    because: `the foam took ${whole(foam.cooling.value)} K from the metal on the mean`,
  };

export const notFed: Weigh = (evidence) => {
  const late = stateOf(evidence, 'riser-freezes-late');
  if (late?.state === 'stop' && late.has && late.needs) {
    return {
      weight: 0.9,
      because: `the riser froze first: its modulus ${tenths(late.has.value)} mm, ${tenths(late.needs.value)} mm asked for`,
    };
  }
  const spot = evidence.check.unfed.find(({ isolated }) => isolated);
  if (spot?.zone.neck) {
    const [body] = spot.zone.bodies;
    const where = body === undefined ? 'a thick place' : evidence.nameOf(body);
    const because = `${where} (modulus ${tenths(spot.zone.modulus.value)} mm) is cut off by metal of ${tenths(spot.zone.neck.value)} mm and had no riser`;
    return { weight: 0.5 + 0.4 * ramp(spot.zone.modulus.value / spot.zone.neck.value, 1.1, 2), because };
  }
  const last = evidence.check.unfed.find(({ isolated }) => !isolated);
  if (last) return { weight: 0.3, because: 'the place that freezes last had no riser' };
  return evidence.check.risers.length > 0
    ? { weight: 0.05, because: 'each thick place had a riser that froze later' }
    : undefined;
};

export const riserSmall: Weigh = (evidence) => {
  const small = stateOf(evidence, 'riser-holds-enough');
  if (!small?.has || !small.needs) return undefined;
  return {
    weight: ramp(small.has.value / small.needs.value, 1.2, 0.6),
    because: `the riser held ${tenths(small.has.value / 1000)} cm³, ${tenths(small.needs.value / 1000)} cm³ asked for`,
  };
};

export const sectionsUneven: Weigh = ({ check: { freezing } }) => {
  const ratios = freezing.castings.flatMap(({ zones, thinnest }) =>
    zones[0] && thinnest ? [zones[0].modulus.value / thinnest.modulus.value] : [],
  );
  if (ratios.length === 0) return undefined;
  const most = Math.max(...ratios);
  return {
    weight: 0.8 * ramp(most, 1.4, 3),
    because: `the thickest place has ${tenths(most)} times the modulus of the thinnest wall`,
  };
};

export const wallThin: Weigh = (evidence) => {
  const thin = stateOf(evidence, 'section-thin');
  if (!thin?.has || !thin.needs) return undefined;
  return {
    weight: ramp(thin.has.value / thin.needs.value, 1.8, 0.9),
    because: `the thinnest wall is ${tenths(thin.has.value)} mm, where ${tenths(thin.needs.value)} mm runs full`,
  };
};

export const headLow: Weigh = (evidence) => {
  const head = stateOf(evidence, 'head');
  if (!head?.has || !head.needs) return undefined;
  const over = head.has.value - head.needs.value;
  return {
    weight: ramp(over, 60, 0),
    because:
      over > 0
        ? `the cup stood ${whole(over)} mm over the top of the casting`
        : 'the cup stood no higher than the top of the casting',
  };
};

export const metalShort: Weigh = ({ check: { journal, charge } }) => {
  if (!journal?.charged || !charge.charge) return undefined;
  const short = charge.charge.value - journal.charged.value;
  const because =
    short > 0
      ? `${formatNumber(short, 2)} kg less was charged than the pour takes`
      : `${formatNumber(-short, 2)} kg more was charged than the pour takes`;
  return { weight: ramp(short / charge.charge.value, -0.05, 0.08), because };
};

export const crucibleDrained: Weigh = ({ check: { journal } }) =>
  journal?.left && {
    weight: journal.left.value <= 0.02 ? 0.8 : 0,
    because:
      journal.left.value <= 0.02
        ? 'the crucible was drained'
        : `${formatNumber(journal.left.value, 2)} kg stayed in the crucible`,
  };

export const copeLifted: Weigh = (evidence) => {
  const { lift } = evidence.check;
  if (!lift.weightNeeded || !lift.holds) return undefined;
  const short = lift.weightNeeded.value;
  return short > 0
    ? {
        weight: 0.5 + 0.5 * ramp(short / lift.holds.value, 0, 0.5),
        because: `${tenths(short)} kg of weight were wanting on the cope`,
      }
    : { weight: 0, because: 'the cope was held down by enough' };
};

export const coverShort: Weigh = (evidence) => {
  const short = evidence.check.verdicts.find(({ code, state }) => code === 'flask-cover' && state !== 'clear');
  if (!short?.has || !short.needs) {
    return evidence.check.mould.coverAround
      ? { weight: 0.05, because: 'the sand round the casting was thick enough' }
      : undefined;
  }
  return {
    weight: ramp(short.has.value / short.needs.value, 1, 0.3),
    because: `${whole(short.has.value)} mm of sand, where ${whole(short.needs.value)} mm is asked for`,
  };
};

export const ironChilled: Weigh = ({ check: { freezing } }) => {
  const thin = freezing.castings.flatMap(({ thinnest }) => (thinnest ? [thinnest.thickness.value] : []));
  if (thin.length === 0) return undefined;
  const least = Math.min(...thin);
  return { weight: ramp(least, 10, 3), because: `the thinnest wall is ${tenths(least)} mm` };
};
