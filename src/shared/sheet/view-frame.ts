import type { Axis } from '../build/station.ts';
import type { Vec3 } from '../solid/placed.ts';
import type { Projection, SheetView, ViewName } from './sheet.ts';

type Direction = SheetView['across'];

/** How the part is turned towards the eye: across × up = towards, a right-handed frame. */
export interface ViewFrame {
  readonly across: Direction;
  readonly up: Direction;
  readonly towards: Direction;
}

const plus = (axis: Axis): Direction => ({ axis, sign: 1 });
const minus = (axis: Axis): Direction => ({ axis, sign: -1 });

/** The frame of an eye that stands off the part in the given direction: Z is up wherever it can be. */
export function frameTowards(axis: Axis, sign: 1 | -1): ViewFrame {
  const towards: Direction = { axis, sign };
  switch (axis) {
    case 'X':
      return { across: sign > 0 ? plus('Y') : minus('Y'), up: plus('Z'), towards };
    case 'Y':
      return { across: sign > 0 ? minus('X') : plus('X'), up: plus('Z'), towards };
    case 'Z':
      return { across: plus('X'), up: sign > 0 ? plus('Y') : minus('Y'), towards };
  }
}

/**
 * The frame of a usual view. The side view stands to the right of the front view: seen from the left in first angle,
 * from the right in third angle (ISO 5456-2:1996, clause 5).
 */
export function frameOfView(view: ViewName, projection: Projection): ViewFrame {
  if (view === 'front') return frameTowards('Y', -1);
  if (view === 'top') return frameTowards('Z', 1);
  return frameTowards('X', projection === 'first' ? -1 : 1);
}

/** The view that looks along an axis. */
export const viewAlong = (axis: Axis): ViewName => (axis === 'X' ? 'side' : axis === 'Y' ? 'front' : 'top');

/** Place of an axis in a {@link Vec3}. */
export const indexOfAxis = (axis: Axis): 0 | 1 | 2 => (axis === 'X' ? 0 : axis === 'Y' ? 1 : 2);

/** A point of the part as the eye sees it: to the right, up, and towards the eye. */
export const inFrame = ({ across, up, towards }: ViewFrame, at: Vec3): Vec3 => [
  across.sign * at[indexOfAxis(across.axis)],
  up.sign * at[indexOfAxis(up.axis)],
  towards.sign * at[indexOfAxis(towards.axis)],
];
