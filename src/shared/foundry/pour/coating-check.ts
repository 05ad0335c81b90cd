import type { PartId } from '../../base/ids.ts';
import { checkDrying, type DryingCheck } from '../drying-check.ts';
import { drawn, type Figure, worked } from '../figure.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';
import { isFoam } from '../moulding.ts';
import type { PourInput } from '../pour-input.ts';
import type { PourAlloy } from './pour-alloy.ts';
import { type PourVerdict, verdict } from './verdict.ts';
import { writtenReader } from './written-reader.ts';

/** The coated pattern of one of the castings. */
export interface CoatingCheck {
  readonly part: PartId;
  readonly drying: DryingCheck;
  /**
   * Metal that takes the place of the foam, by the weight of the bare pattern and a foam density that was measured: a check of the
   * solid's volume. Undefined where either is not known, or where something else is built into the pattern.
   */
  readonly metalByPattern: Figure | undefined;
}

export interface CoatingsCheck {
  readonly coatings: readonly CoatingCheck[];
  readonly verdicts: readonly PourVerdict[];
  readonly unknown: readonly FoundryUnknown[];
}

/** Patterns that stay in the mould carry their coating's water into it. */
export function coatingsCheck(input: PourInput, alloy: PourAlloy | undefined): CoatingsCheck {
  const unknown: FoundryUnknown[] = [];
  const verdicts: PourVerdict[] = [];
  const coatings = input.pour.castings.flatMap(({ part, pattern: id }, i): CoatingCheck[] => {
    const casting = input.castingOf(part);
    if (!isFoam(casting?.casting?.moulding)) return [];
    const pattern = id === undefined ? undefined : input.patternOf(id);
    if (!pattern) {
      const missing: FoundryUnknown = { is: 'field', field: `castings/${i}/pattern` };
      unknown.push(missing);
      verdicts.push(verdict('coating-dry', 'unknown', { about: { part }, unknown: [missing] }));
      return [];
    }
    const drying = checkDrying(pattern, input.lengthUnit);
    const about = { part, pattern: pattern.id };
    const state =
      drying.gate === 'dry' ? (drying.plaster ? 'caution' : 'clear') : drying.gate === 'taken on' ? 'caution' : 'stop';
    verdicts.push(verdict('coating-dry', state, { about }));
    const foam = writtenReader(input.lengthUnit, []).density(casting?.casting?.foamDensity ?? '', 'foamDensity');
    const bare = input.pour.inserts.length === 0 ? drying.bare : undefined;
    const metalByPattern = worked(
      'kg',
      'weight of the bare pattern by the densities of metal and foam',
      [bare && drawn(bare.value, 'kg', 'weighed'), foam, alloy?.ifKnown('solidDensityKgM3')],
      (kg, foamRho, rho) => (kg * rho) / foamRho,
    );
    return [{ part, drying, metalByPattern }];
  });
  return { coatings, verdicts, unknown };
}
