import { foundryPractice } from '../../tables/foundry-practice.ts';
import { type Figure, fromTable, worked } from '../figure.ts';
import { chokeArea, leastGateArea, SPRUE_DISCHARGE, sprueFoot } from '../gating.ts';

const ratioWords = foundryPractice.gateRatio.source;

/** Sizes that follow from the time in which the mould should be full. */
export interface GatingProposal {
  readonly fillTime: Figure;
  readonly chokeArea: Figure;
  /** Diameters of a round sprue at its foot and at its top. */
  readonly sprueFoot: Figure;
  readonly sprueTop: Figure;
  readonly runnerArea: Figure;
  readonly gatesArea: Figure;
}

/** Nothing can be divided by what is nought. */
export const positive = (figure: Figure | undefined): Figure | undefined =>
  figure && figure.value > 0 ? figure : undefined;

/** Time in which the mould should be full: a share of that in which the thinnest section freezes, but no quicker than foam lets. */
export const wantedTime = (thinnestTime: Figure | undefined, foamTime: Figure | undefined): Figure | undefined => {
  const share = fromTable(foundryPractice.fillShare, '');
  const wanted = worked(
    's',
    `${share.value} of the time in which the thinnest section freezes; ${share.origin}`,
    [thinnestTime, share],
    (s, part) => s * part,
  );
  return wanted && foamTime && foamTime.value > wanted.value ? foamTime : wanted;
};

/** Choke for so much metal in such a time. */
export const chokeFor = (
  volume: Figure | undefined,
  time: Figure | undefined,
  head: Figure | undefined,
): Figure | undefined =>
  worked(
    'mm²',
    `all that runs in, in that time, at ${SPRUE_DISCHARGE} of a free fall (from memory)`,
    [volume, time, positive(head)],
    (mm3, s, h) => chokeArea(mm3 * 1e-9, 1, s, h),
  );

/** What a mould wants, from the time in which it should be full. Undefined while that cannot be told. */
export function proposeGating(
  volume: Figure | undefined,
  head: Figure | undefined,
  foamTime: Figure | undefined,
  thinnestTime: Figure | undefined,
): GatingProposal | undefined {
  const time = wantedTime(thinnestTime, foamTime);
  const area = chokeFor(volume, time, head);
  const cup = fromTable(foundryPractice.cupDepthMm, 'mm');
  const foot = worked('mm', 'diameter of the choke', [area], (mm2) => Math.sqrt((4 * mm2) / Math.PI));
  // A full sprue narrows with the root of the heads; the formula is the same read from the foot upwards.
  const top = worked(
    'mm',
    `tapered so that it stays full under a cup of ${cup.value} mm; ${cup.origin}`,
    [area, cup, head],
    (mm2, depth, h) => Math.sqrt((4 * sprueFoot(mm2, depth + h, depth)) / Math.PI),
  );
  const runnerArea = worked(
    'mm²',
    `choke by ${foundryPractice.runnerRatio.value}; ${ratioWords}`,
    [area, fromTable(foundryPractice.runnerRatio, '')],
    (a, n) => a * n,
  );
  const gatesArea = worked(
    'mm²',
    `choke by ${foundryPractice.gateRatio.value} (${ratioWords}), and no faster than 0.5 m/s`,
    [area, fromTable(foundryPractice.gateRatio, ''), volume, time],
    (a, n, mm3, s) => Math.max(a * n, leastGateArea(mm3 / s)),
  );
  return time && area && foot && top && runnerArea && gatesArea
    ? { fillTime: time, chokeArea: area, sprueFoot: foot, sprueTop: top, runnerArea, gatesArea }
    : undefined;
}
