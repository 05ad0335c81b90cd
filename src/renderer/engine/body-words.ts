import type { DimensionId, StationId } from '../../shared/base/ids.ts';
import type { ShapeType } from '../../shared/build/body.ts';
import { formatQuantity } from '../../shared/quantity/format.ts';
import type { LengthUnit } from '../../shared/quantity/kind.ts';
import { boundsOf } from '../../shared/solid/bounds.ts';
import type { MeshFault } from '../../shared/solid/manifold/kernel.ts';
import type { BodyProblem, PlacedBody, ShapeProblemCode } from '../../shared/solid/placed.ts';

export const shapeWords: Readonly<Record<ShapeType, string>> = {
  block: 'block',
  cylinder: 'cylinder',
  cone: 'cone',
  prism: 'prism',
  revolved: 'turned profile',
  hole: 'hole',
  slot: 'slot',
  pocket: 'pocket',
  rib: 'rib',
  fillet: 'fillet',
  imported: 'imported solid',
};

const shapeProblems: Readonly<Record<ShapeProblemCode, string>> = {
  'outline-crosses': 'Its outline crosses or touches itself. Put its corners in order round the outline.',
  'radius-too-large': 'A rounding does not fit on the sides that meet at its corner. Make the radius smaller.',
  'bore-not-smaller': 'Its bore is as wide as the cylinder. Make the bore smaller.',
  'thread-without-pitch': 'The pitch of its thread is not known. Write the thread with its pitch, such as M8x1.',
  'counterbore-not-wider': 'Its counterbore is no wider than the hole. Make the counterbore wider.',
  'counterbore-too-deep': 'Its counterbore is deeper than the hole. Make the counterbore shallower.',
  'countersink-not-wider': 'Its countersink is no wider than the hole. Make the countersink wider.',
  'countersink-too-deep': 'Its countersink is deeper than the hole. Make it narrower, or its angle wider.',
  'angle-out-of-range': 'An angle of it is not between 0° and 180°. Correct the angle.',
  'count-not-whole': 'A count of it is no whole number of at least 1. Correct the count.',
  'too-many-copies': 'It has more copies than can be shown. Make the counts smaller.',
  'size-does-not-fit': 'A dimension that it takes as a size measures something else. Choose another.',
  'mesh-inside-out': 'The imported solid is inside out or encloses nothing. Import it again from a sound file.',
};

export const meshFaultWords: Readonly<Record<MeshFault, string>> = {
  'no triangles': 'Nothing is left of it.',
  'not closed': 'Its surface is not closed.',
  'not finite': 'A place of it is beyond all measure.',
  'inside out': 'Its surface is inside out.',
  'too large': 'It has more faces than can be worked with.',
  'not taken': 'The kernel cannot make a solid of it.',
};

/** `"a"`, `"a" and "b"`, `"a", "b" and "c"`. */
const listed = (names: readonly string[]): string => {
  const quoted = names.map((name) => `"${name}"`);
  return quoted.length < 2 ? quoted.join('') : `${quoted.slice(0, -1).join(', ')} and ${quoted.at(-1)}`;
};

/** Why a body has no solid and what to do about it. `nameOf` gives the name of a station or dimension. */
export function bodyProblemWords(problem: BodyProblem, nameOf: (id: StationId | DimensionId) => string): string {
  switch (problem.why) {
    case 'not-placed': {
      const parts: string[] = [];
      const { stations, dimensions } = problem;
      if (stations.length > 0) parts.push(`no dimension places ${listed(stations.map(nameOf))}`);
      if (dimensions.length > 0)
        parts.push(`${listed(dimensions.map(nameOf))} ${dimensions.length === 1 ? 'has' : 'have'} no value`);
      if (parts.length === 0) return 'The solid that it puts in place is not in the build. Import it again.';
      const sentence = parts.join(', and ');
      return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`;
    }
    case 'no-size':
      return `It has no size: ${listed(problem.at.map(nameOf))} leave${problem.at.length === 1 ? 's' : ''} nothing between. Correct what places them.`;
    case 'shape':
      return shapeProblems[problem.code];
  }
}

/** How large a body is over all, e.g. `60 × 40 × 20 mm`. */
export function extentWords(placed: PlacedBody, unit: LengthUnit): string | undefined {
  const bounds = boundsOf(placed);
  if (bounds === undefined) return undefined;
  return boxWords(bounds.min, bounds.max, unit);
}

/** A length of a solid without its unit. */
export const bareLength = (mm: number, unit: LengthUnit): string =>
  formatQuantity(mm, 'length', { unit, bare: true, firm: true });

/** Length × width × height of a box. */
export function boxWords(min: readonly number[], max: readonly number[], unit: LengthUnit): string {
  const sizes = [0, 1, 2].map((k) => bareLength(max[k]! - min[k]!, unit));
  return `${sizes.join(' × ')} ${unit}`;
}
