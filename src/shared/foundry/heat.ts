/** What the heat of a charge is worked out from; °C, kJ/kg, kJ/(kg·K). */
export interface Thermal {
  readonly solidusC: number;
  readonly liquidusC: number;
  readonly latentKJKg: number;
  readonly solidHeatKJKgK: number;
  readonly liquidHeatKJKgK: number;
}

/**
 * Heat to bring a kilogram from `fromC`, solid, to `toC`, liquid: c_s (T_s − T_0) + L + c_m (T_L − T_s) + c_l (T_p − T_L), with
 * the mean of both capacities in the freezing range. Standard textbook form (Groover, ch. 10, takes one melting point).
 *
 * @returns kJ/kg.
 */
export function heatToPour(alloy: Thermal, fromC: number, toC: number): number {
  const { solidusC, liquidusC, latentKJKg, solidHeatKJKgK, liquidHeatKJKgK } = alloy;
  const mushy = ((solidHeatKJKgK + liquidHeatKJKgK) / 2) * (liquidusC - solidusC);
  return solidHeatKJKgK * (solidusC - fromC) + latentKJKg + mushy + liquidHeatKJKgK * (toC - liquidusC);
}

/**
 * Heat that a kilogram of liquid at `fromC` has given off when it has cooled to `toC`; latent heat is taken to leave evenly
 * over the freezing range, all at once where there is none.
 *
 * @returns kJ/kg, 0 or more; `toC` above `fromC` gives 0.
 */
export function heatGiven(alloy: Thermal, fromC: number, toC: number): number {
  return Math.max(0, content(alloy, fromC) - content(alloy, toC));
}

/** Heat that a kilogram of liquid at `fromC` has given off when so much of it is solid, kJ/kg: 0 just begins to freeze, 1 is frozen. */
export function heatToFraction(alloy: Thermal, fromC: number, solidFraction: number): number {
  return Math.max(0, content(alloy, fromC) - (1 - solidFraction) * meltingHeat(alloy));
}

/** From the solidus to the liquidus, kJ/kg. */
const meltingHeat = (alloy: Thermal): number => alloy.latentKJKg + meanHeat(alloy) * (alloy.liquidusC - alloy.solidusC);

/** Heat content over the solidus, kJ/kg; negative below it. */
function content(alloy: Thermal, at: number): number {
  const { solidusC, liquidusC, solidHeatKJKgK, liquidHeatKJKgK } = alloy;
  if (at <= solidusC && at < liquidusC) return solidHeatKJKgK * (at - solidusC);
  if (at < liquidusC) {
    const share = (at - solidusC) / (liquidusC - solidusC);
    return share * meltingHeat(alloy);
  }
  return meltingHeat(alloy) + liquidHeatKJKgK * (at - liquidusC);
}

const meanHeat = ({ solidHeatKJKgK, liquidHeatKJKgK }: Thermal): number => (solidHeatKJKgK + liquidHeatKJKgK) / 2;

/** Where the metal stands after giving off `given` kJ/kg from `fromC`. */
export interface Cooled {
  readonly temperatureC: number;
  /** 0 liquid … 1 solid. */
  readonly solidFraction: number;
}

/** The inverse of {@link heatGiven}. */
export function cooledBy(alloy: Thermal, fromC: number, givenKJKg: number): Cooled {
  const { solidusC, liquidusC, solidHeatKJKgK, liquidHeatKJKgK } = alloy;
  const left = content(alloy, fromC) - givenKJKg;
  const melted = meltingHeat(alloy);
  if (left >= melted) return { temperatureC: liquidusC + (left - melted) / liquidHeatKJKgK, solidFraction: 0 };
  if (left <= 0) return { temperatureC: solidusC + left / solidHeatKJKgK, solidFraction: 1 };
  const share = left / melted;
  return { temperatureC: solidusC + share * (liquidusC - solidusC), solidFraction: 1 - share };
}

/**
 * Time to melt and heat a charge at the furnace's rate to the metal.
 *
 * @param rateKW heat that reaches the charge (from a melt that was timed: mass × heat ÷ time), not the burner's rating.
 * @returns minutes.
 */
export const minutesToHeat = (heatKJ: number, rateKW: number): number => heatKJ / rateKW / 60;

/** Rate to the metal of a melt that was recorded, kW. */
export const rateOfMelt = (massKg: number, heatKJKg: number, minutes: number): number =>
  (massKg * heatKJKg) / (minutes * 60);
