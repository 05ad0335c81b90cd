import type { PartId } from '../../base/ids.ts';
import type { Direction } from '../../build/casting.ts';
import type { Pour } from '../../build/pour.ts';
import { axes } from '../../build/station.ts';
import type { Vec3 } from '../../solid/placed.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';
import { isFoam } from '../moulding.ts';
import type { CastingInput, PourInput } from '../pour-input.ts';
import { writtenReader } from './written-reader.ts';

/** A casting as it stands in the mould. */
export interface Standing {
  readonly part: PartId;
  readonly count: number;
  readonly casting: CastingInput;
  readonly up: Direction;
  /** From its lowest to its highest point, mm. */
  readonly heightMm: number;
  /** Along X, Y and Z of the part without the upright one. */
  readonly acrossMm: readonly [number, number];
  /** Height of the parting over the lowest point; undefined where it is not said. */
  readonly partingMm: number | undefined;
  readonly foam: boolean;
  /** Height of a place of the part over the lowest point. */
  heightOf(place: Vec3): number;
}

export const opposite = (up: Direction): Direction => `${up[0] === '+' ? '-' : '+'}${up[1]}` as Direction;

/** The castings of a pour that are worked out and have a way up. What is missing of the others is noted. */
export function standingOf(input: PourInput, unknown: FoundryUnknown[]): readonly Standing[] {
  return input.pour.castings.flatMap((one, i) => {
    const casting = input.castingOf(one.part);
    if (!casting?.solid) {
      unknown.push({ is: 'solid', part: one.part });
      return [];
    }
    const up = one.up ?? casting.casting?.up;
    if (!up) {
      unknown.push({ is: 'field', field: `castings/${i}/up` });
      return [];
    }
    return [stand(input, casting, casting.solid.box, one, up)];
  });
}

function stand(
  input: PourInput,
  casting: CastingInput,
  { min, max }: NonNullable<CastingInput['solid']>['box'],
  { part, count }: Pour['castings'][number],
  up: Direction,
): Standing {
  const axis = axes.indexOf(up[1] as 'X' | 'Y' | 'Z');
  const heightOf = (place: Vec3): number => (up[0] === '+' ? place[axis]! - min[axis]! : max[axis]! - place[axis]!);
  const sides = [0, 1, 2].filter((k) => k !== axis).map((k) => max[k]! - min[k]!);
  return {
    part,
    count,
    casting,
    up,
    heightMm: max[axis]! - min[axis]!,
    acrossMm: [sides[0]!, sides[1]!],
    partingMm: partingOf(input, casting, up, axis, heightOf),
    foam: isFoam(casting.casting?.moulding),
    heightOf,
  };
}

function partingOf(
  { numbers, lengthUnit }: PourInput,
  { casting }: CastingInput,
  up: Direction,
  axis: number,
  heightOf: (place: Vec3) => number,
): number | undefined {
  const parting = casting?.parting;
  const station = parting && numbers.record(parting.station);
  if (!parting || station?.kind !== 'station' || station.axis !== up[1]) return undefined;
  const at = numbers.place(parting.station)?.at;
  const beyond = writtenReader(lengthUnit, []).signed(parting.beyond);
  if (at === undefined || beyond === undefined) return undefined;
  const place: [number, number, number] = [0, 0, 0];
  place[axis] = at + beyond;
  return heightOf(place);
}
