/** Heat that a kilogram of foam takes to melt, break down and leave as gas, kJ/kg: 1400 to 1800 worked out, the high end here. */
const FOAM_HEAT_KJ_KG = 1800;
/** Gas of expanded polystyrene at 800 °C, litres (0 °C, 1 atm) per gram; read in a conference abstract. */
export const FOAM_GAS_L_PER_G = 0.61;

/** What foam takes from the metal that replaces it, averaged over all of it, K. The leading front loses more. */
export const foamCooling = (foamKgM3: number, liquidKgM3: number, liquidHeatKJKgK: number): number =>
  (foamKgM3 * FOAM_HEAT_KJ_KG) / (liquidKgM3 * liquidHeatKJKgK);

/** Gas of a foam pattern, litres at 0 °C and 1 atm. */
export const foamGas = (volumeMm3: number, foamKgM3: number): number =>
  volumeMm3 * 1e-9 * foamKgM3 * 1000 * FOAM_GAS_L_PER_G;
