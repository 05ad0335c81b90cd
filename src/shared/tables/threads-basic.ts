import type { RowStatus } from './row.ts';

/** Profiles that threads are cut to: 60° of ISO 68-1 and of ASME B1.1, 30° of ISO 2901, 55° of BS 84. */
export type ThreadForm = 'metric' | 'unified' | 'trapezoidal' | 'whitworth';

/** Basic sizes of a thread, without its allowances and tolerances. */
export interface BasicThread {
  /** Thickness of thread and groove are equal here (d2, D2), in mm. */
  readonly pitchDiameterMm: number;
  /** Minor diameter of the nut (D1), in mm: the hole at full basic height. */
  readonly minorNutMm: number;
  /** Minor diameter of the screw at the root (d3), in mm. */
  readonly minorScrewMm: number;
  /** Area that carries a pull on the screw (As), in mm². */
  readonly stressAreaMm2: number;
  /** Where the diameters come from. */
  readonly source: string;
  readonly stressAreaSource: string;
  readonly status: RowStatus;
}

/** What a profile takes off the major diameter, in pitches. */
interface Profile {
  readonly pitchDiameter: number;
  readonly minorNut: number;
  readonly minorScrew: (pitchMm: number) => number;
  /** Off the major diameter of the circle that has the stress area. */
  readonly stress: (pitchMm: number) => number;
  readonly source: string;
  readonly stressAreaSource: string;
  readonly status: RowStatus;
}

/** Height of the sharp triangle of 60° in pitches. */
const SHARP = Math.sqrt(3) / 2;
const MEAN_OF_PITCH_AND_ROOT = 'π/4 of the mean of pitch and root diameter squared, common practice, no source';

/** Clearance at the crest of trapezoidal threads in mm, by pitch in mm: ISO 2904, from memory. */
const crestClearance = (pitchMm: number): number => {
  if (pitchMm < 2) return 0.15;
  if (pitchMm <= 5) return 0.25;
  return pitchMm <= 12 ? 0.5 : 1;
};

const trapezoidalRoot = (pitchMm: number): number => 1 + (2 * crestClearance(pitchMm)) / pitchMm;

const profiles: Readonly<Record<ThreadForm, Profile>> = {
  // d2 = d − 2·3/8 H, D1 = d − 2·5/8 H, d3 = D1 − H/6 (the root rounded off), As on the mean of d2 and d3.
  metric: {
    pitchDiameter: 0.75 * SHARP,
    minorNut: 1.25 * SHARP,
    minorScrew: () => (17 / 12) * SHARP,
    stress: () => (13 / 12) * SHARP,
    source: 'ISO 68-1 profile, ISO 724 formulas',
    stressAreaSource: 'ISO 898-1 formula',
    status: 'read',
  },
  // The root of the screw is that of the UNR form, 11/16 H below the basic major diameter.
  unified: {
    pitchDiameter: 0.75 * SHARP,
    minorNut: 1.25 * SHARP,
    minorScrew: () => (11 / 8) * SHARP,
    stress: () => (9 / 8) * SHARP,
    source: 'ASME B1.1 formulas, root of the screw UNR',
    stressAreaSource: 'ASME B1.1 formula, 0.7854 (D − 0.9743/n)²',
    status: 'read',
  },
  trapezoidal: {
    pitchDiameter: 0.5,
    minorNut: 1,
    minorScrew: trapezoidalRoot,
    stress: (pitchMm) => (0.5 + trapezoidalRoot(pitchMm)) / 2,
    source: 'ISO 2904 formulas (from memory)',
    stressAreaSource: MEAN_OF_PITCH_AND_ROOT,
    status: 'from memory',
  },
  // Depth 0.640327 P: 2/3 of the sharp triangle of 55°, whose height is half the pitch over tan 27.5°.
  whitworth: {
    pitchDiameter: whitworthDepth(),
    minorNut: 2 * whitworthDepth(),
    minorScrew: () => 2 * whitworthDepth(),
    stress: () => 1.5 * whitworthDepth(),
    source: 'BS 84 formulas (from memory)',
    stressAreaSource: MEAN_OF_PITCH_AND_ROOT,
    status: 'from memory',
  },
};

function whitworthDepth(): number {
  return 1 / (3 * Math.tan((27.5 * Math.PI) / 180));
}

/** Basic diameters and stress area of a thread, from its major diameter and its pitch in mm. */
export function basicThread(form: ThreadForm, majorMm: number, pitchMm: number): BasicThread {
  const { pitchDiameter, minorNut, minorScrew, stress, source, stressAreaSource, status } = profiles[form];
  return {
    pitchDiameterMm: majorMm - pitchDiameter * pitchMm,
    minorNutMm: majorMm - minorNut * pitchMm,
    minorScrewMm: majorMm - minorScrew(pitchMm) * pitchMm,
    stressAreaMm2: (Math.PI / 4) * (majorMm - stress(pitchMm) * pitchMm) ** 2,
    source,
    stressAreaSource,
    status,
  };
}
