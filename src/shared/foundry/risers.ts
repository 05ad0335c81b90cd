import { modulusOf } from './freezing.ts';

/** A riser must freeze after what it feeds: M_r ≥ 1.2 M_c (from memory: Campbell, Complete Casting Handbook, heat-transfer rule). */
export const RISER_MODULUS_FACTOR = 1.2;
/** Share of a plain cylindrical riser that it can give (from memory: about 0.14). */
export const RISER_EFFICIENCY = 0.14;

export interface RiserDemand {
  /** Of the section that it feeds, mm. */
  readonly modulusMm: number;
  /** Volume that it feeds, mm³. */
  readonly fedMm3: number;
  /** Lost while freezing, a share: 0.07. */
  readonly shrinkage: number;
  /** Height by diameter. */
  readonly slenderness: number;
  readonly efficiency?: number;
  readonly factor?: number;
}

export interface RiserSize {
  readonly diameterMm: number;
  readonly heightMm: number;
  readonly volumeMm3: number;
  /** Which of the two rules asked for the size. */
  readonly by: 'modulus' | 'volume';
}

/**
 * The smallest cylindrical riser on the casting (its base does not cool) that freezes late enough and holds enough:
 * M_r ≥ factor · M_c, and ε V_r ≥ α (V_r + V_c), that is V_r ≥ α V_c / (ε − α).
 *
 * @returns undefined where the shrinkage is as large as what a riser can give: no plain riser feeds it.
 */
export function riserFor(demand: RiserDemand): RiserSize | undefined {
  const { modulusMm, fedMm3, shrinkage, slenderness } = demand;
  const efficiency = demand.efficiency ?? RISER_EFFICIENCY;
  const factor = demand.factor ?? RISER_MODULUS_FACTOR;
  if (efficiency <= shrinkage) return undefined;
  // modulus of D × sD on its base is D · s / (4 s + 1)
  const byModulus = (factor * modulusMm * (4 * slenderness + 1)) / slenderness;
  const volume = (shrinkage * fedMm3) / (efficiency - shrinkage);
  const byVolume = Math.cbrt((4 * volume) / (Math.PI * slenderness));
  const diameterMm = Math.max(byModulus, byVolume);
  const heightMm = diameterMm * slenderness;
  return {
    diameterMm,
    heightMm,
    volumeMm3: (Math.PI / 4) * diameterMm ** 2 * heightMm,
    by: byModulus >= byVolume ? 'modulus' : 'volume',
  };
}

/** Whether a riser that is drawn does both. */
export function riserFeeds(
  riser: { readonly diameterMm: number; readonly heightMm: number },
  demand: Pick<RiserDemand, 'modulusMm' | 'fedMm3' | 'shrinkage' | 'efficiency' | 'factor'>,
): { readonly modulusMm: number; readonly lateEnough: boolean; readonly largeEnough: boolean } {
  const efficiency = demand.efficiency ?? RISER_EFFICIENCY;
  const factor = demand.factor ?? RISER_MODULUS_FACTOR;
  const modulusMm = modulusOf.cylinderOnBase(riser.diameterMm, riser.heightMm);
  const volume = (Math.PI / 4) * riser.diameterMm ** 2 * riser.heightMm;
  return {
    modulusMm,
    lateEnough: modulusMm >= factor * demand.modulusMm * (1 - 1e-12),
    largeEnough: efficiency * volume >= demand.shrinkage * (volume + demand.fedMm3) * (1 - 1e-12),
  };
}
