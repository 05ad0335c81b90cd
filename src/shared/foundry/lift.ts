const GRAVITY = 9.80665;
/** Weight on a cope by the lift it must hold (from memory: 1.5 to 2). */
export const LIFT_FACTOR = 1.5;

/** Pressure of the liquid under a head, kPa. */
export const pressureUnder = (headMm: number, liquidKgM3: number): number => (headMm * liquidKgM3 * GRAVITY) / 1e6;

/** Lift on the cope over a projected area under a head, newtons: F = A h ρ g. */
export const copeLift = (areaMm2: number, headMm: number, liquidKgM3: number): number =>
  areaMm2 * 1e-6 * headMm * 1e-3 * liquidKgM3 * GRAVITY;

/** Lift on a core that the metal surrounds, newtons: its volume's worth of metal less its own weight. */
export const coreLift = (coreMm3: number, liquidKgM3: number, coreKgM3: number): number =>
  coreMm3 * 1e-9 * (liquidKgM3 - coreKgM3) * GRAVITY;

/** Mass to be laid on the cope, kg, 0 when its own holds. */
export const weightNeeded = (liftN: number, copeKg: number, factor = LIFT_FACTOR): number =>
  Math.max(0, (liftN / GRAVITY) * factor - copeKg);
