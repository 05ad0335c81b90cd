import type { BodyId } from '../../src/shared/base/ids.ts';
import type { Body, Shape } from '../../src/shared/build/body.ts';
import { STAY } from '../../src/shared/solid/moves.ts';
import type { BodyProblem, ExactShape, MassProperties, Move, PlacedBody } from '../../src/shared/solid/placed.ts';
import type { PartFaces, PartSolid } from '../../src/shared/solid/solids.ts';
import { dimensionId, partId, stationId } from './facts.ts';
import { block } from './placed-bodies.ts';

export const bodyId = (name: string): BodyId => `body:${name}` as BodyId;

interface BodyGiven extends Partial<Pick<Body, 'adds' | 'finish' | 'shape' | 'name'>> {
  /** The exact shape; a block of 100 by 60 by 12 when nothing is said, none when there is a problem. */
  readonly exact?: ExactShape;
  readonly moves?: readonly Move[];
  readonly problem?: BodyProblem;
}

/** What a block is drawn by, where a rule does not look at it. */
const anyShape: Shape = {
  type: 'block',
  x: [stationId('left'), stationId('right')],
  y: [stationId('front'), stationId('back')],
  z: [stationId('bottom'), stationId('top')],
};

/** A drilled hole whose diameter is the dimension of that name. */
export const holeShape = (diameter: string, more: Partial<Extract<Shape, { type: 'hole' }>> = {}): Shape => ({
  type: 'hole',
  axis: 'Z',
  from: stationId('top'),
  to: stationId('bottom'),
  centre: [stationId('left'), stationId('front')],
  diameter: dimensionId(diameter),
  ...more,
});

/** A body of the part `column`, called after its id. */
export function placedBody(name: string, given: BodyGiven = {}): PlacedBody {
  const { exact = block([0, 100], [0, 60], [0, 12]), moves = [STAY], problem, ...over } = given;
  return {
    record: {
      kind: 'body',
      id: bodyId(name),
      part: partId('column'),
      name,
      adds: true,
      finish: 'as cast',
      shape: anyShape,
      repeats: [],
      note: '',
      order: 1,
      ...over,
    },
    shape: problem ? undefined : exact,
    moves: problem ? [] : moves,
    problem,
    stations: [],
    dimensions: [],
  };
}

export const notPlaced = (stations: readonly string[], dimensions: readonly string[] = []): BodyProblem => ({
  why: 'not-placed',
  stations: stations.map(stationId),
  dimensions: dimensions.map(dimensionId),
});

const properties: MassProperties = {
  volumeMm3: 72_000,
  areaMm2: 15_840,
  centre: [50, 30, 6],
  boxMin: [0, 0, 0],
  boxMax: [100, 60, 12],
  inertia: [1, 1, 1, 0, 0, 0],
  pieces: 1,
};

interface SolidGiven {
  readonly finished?: Partial<MassProperties>;
  readonly asCast?: Partial<MassProperties>;
  readonly idle?: readonly string[];
  readonly faces?: Partial<PartFaces>;
}

/** The solid of a plate of 100 by 60 by 12, but for what is said. */
export const solidFact = ({ finished, asCast, idle = [], faces = {} }: SolidGiven = {}): PartSolid => ({
  part: partId('column'),
  level: 'measured',
  finished: { ...properties, ...finished },
  asCast: { ...properties, ...asCast },
  idle: idle.map(bodyId),
  faces: { walls: [], holes: [], flats: [], loose: { finished: [], 'as cast': [] }, ...faces },
});
