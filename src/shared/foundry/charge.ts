/** What one pour takes, volumes in mm³, masses in kg. */
export interface ChargeInput {
  /** Of the castings as poured: stock, draft, lugs and closed holes included; inserts left out. */
  readonly castingMm3: number;
  /** Sprue, runners, gates, cup. */
  readonly gatingMm3: number;
  readonly risersMm3: number;
  readonly solidDensityKgM3: number;
  /** At the pouring temperature; decides what the crucible holds. */
  readonly liquidDensityKgM3: number;
  /** Poured besides, so that the mould is surely full. */
  readonly overflowKg: number;
  /** Lost as dross and oxide, a share of the charge: 0.02. */
  readonly loss: number;
  /** Left in the crucible on purpose. */
  readonly heelKg: number;
}

export interface Charge {
  readonly castingKg: number;
  /** All that goes into the mould, with the overflow allowance. */
  readonly pouredKg: number;
  /** To be put into the crucible. */
  readonly chargeKg: number;
  /** Liquid in the crucible before pouring, litres: poured and heel; dross is skimmed by then. */
  readonly liquidLitres: number;
  /** Castings by all that is poured, 0…1. */
  readonly yield: number;
}

const KG_PER_MM3 = 1e-9;

/**
 * m_poured = ρ (V_casting + V_gating + V_risers) + overflow; m_charge = (m_poured + heel) / (1 − loss); the liquid volume goes
 * by the density of the liquid. Definition of yield: mass of the castings by mass poured.
 */
export function chargeOf(input: ChargeInput): Charge {
  const castingKg = input.castingMm3 * input.solidDensityKgM3 * KG_PER_MM3;
  const gatedKg = (input.gatingMm3 + input.risersMm3) * input.solidDensityKgM3 * KG_PER_MM3;
  const pouredKg = castingKg + gatedKg + input.overflowKg;
  const liquidKg = pouredKg + input.heelKg;
  return {
    castingKg,
    pouredKg,
    chargeKg: liquidKg / (1 - input.loss),
    liquidLitres: (liquidKg / input.liquidDensityKgM3) * 1000,
    yield: pouredKg > 0 ? castingKg / pouredKg : 0,
  };
}

/** Melts that a crucible of the working capacity needs for so much liquid. One mould cannot be filled in two melts. */
export const meltsFor = (liquidLitres: number, capacityLitres: number): number =>
  Math.max(1, Math.ceil(liquidLitres / capacityLitres - 1e-9));

/**
 * Mass of metal by the weight of the foam pattern that it replaces: m = m_foam · ρ_metal / ρ_foam. Right only with a foam
 * density that was measured on an offcut.
 */
export const massFromFoam = (foamKg: number, foamKgM3: number, metalKgM3: number): number =>
  (foamKg * metalKgM3) / foamKgM3;
