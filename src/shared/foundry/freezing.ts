/**
 * Chvorinov's rule: t = B (V/A)^n.
 *
 * @param moduliMm V/A over the surface that cools, mm.
 * @param b mould constant in s/mm² for n = 2.
 * @returns seconds.
 */
export const freezingTime = (modulusMm: number, b: number, n = 2): number => b * modulusMm ** n;

/** Mould constants are printed in min/cm² as well: 1 min/cm² = 0.6 s/mm². */
export const fromMinPerCm2 = (b: number): number => b * 0.6;

/** The mould constant that a known freezing time and modulus come to. */
export const mouldConstant = (seconds: number, modulusMm: number, n = 2): number => seconds / modulusMm ** n;

/** What the mould constant follows from; SI with temperatures in °C. */
export interface MouldHeat {
  readonly densityKgM3: number;
  readonly latentKJKg: number;
  readonly heatKJKgK: number;
  /** What it is taken to freeze at: the liquidus of an alloy with a range, which agrees with published constants better. */
  readonly freezesC: number;
  readonly pourC: number;
  readonly ambientC: number;
  /** k ρ c of the mould, W²·s/(m⁴·K²): about 1.06e6 for dry silica sand (0.6 · 1600 · 1100, from memory). */
  readonly mouldKRhoC: number;
}

/** k ρ c of dry silica sand (from memory: 0.6 W/mK, 1600 kg/m³, 1100 J/kgK). */
export const SAND_K_RHO_C = 0.6 * 1600 * 1100;

/**
 * B = [ρ (L + c (T_pour − T_f)) / (1.128 √(kρc) (T_f − T_ambient))]², one-dimensional conduction into the mould
 * (1.128 = 2/√π; lecture on feeder design). It takes no account of convection, air gaps or foam: a figure of order, for
 * comparing sections.
 *
 * @returns s/mm².
 */
export function mouldConstantOf(heat: MouldHeat): number {
  const joulesPerM3 =
    heat.densityKgM3 * (heat.latentKJKg + heat.heatKJKgK * Math.max(0, heat.pourC - heat.freezesC)) * 1000;
  const root = joulesPerM3 / ((2 / Math.sqrt(Math.PI)) * Math.sqrt(heat.mouldKRhoC) * (heat.freezesC - heat.ambientC));
  return root ** 2 * 1e-6;
}

/** Moduli of simple sections, mm; exact. */
export const modulusOf = {
  plate: (thickness: number): number => thickness / 2,
  longBar: (side: number): number => side / 4,
  cube: (side: number): number => side / 6,
  sphere: (diameter: number): number => diameter / 6,
  /** All faces cool. */
  cylinder: (diameter: number, height: number): number => (diameter * height) / (4 * height + 2 * diameter),
  /** The base stands on the casting and does not cool. */
  cylinderOnBase: (diameter: number, height: number): number => (diameter * height) / (4 * height + diameter),
  box: (a: number, b: number, c: number): number => (a * b * c) / (2 * (a * b + b * c + c * a)),
} as const;
