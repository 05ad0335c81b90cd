import type { DimensionId, StationId } from '../base/ids.ts';
import { err, type Result } from '../base/result.ts';
import type { BodyProblem, ShapeProblemCode } from './placed.ts';

type At = readonly (StationId | DimensionId | undefined)[];

/** What a shape or its repeats come to, or why they come to nothing. */
export type Placed<T> = Result<T, BodyProblem>;

const there = (at: At): readonly (StationId | DimensionId)[] => [
  ...new Set(at.filter((id): id is StationId | DimensionId => id !== undefined)),
];

/** Two places coincide, or a size is zero or less. */
export const noSize = (...at: At) => err({ why: 'no-size', at: there(at) } as const);

export const shapeProblem = (code: ShapeProblemCode, ...at: At) => err({ why: 'shape', code, at: there(at) } as const);
