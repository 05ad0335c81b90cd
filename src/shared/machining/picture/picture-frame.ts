import { axesAcross } from '../../build/body-uses.ts';
import { type Axis, axes } from '../../build/station.ts';
import type { SweepLine } from '../swept/sweep-piece.ts';
import type { PictureAxis, PictureFrame } from './scene.ts';

type Direction = Pick<PictureAxis, 'axis' | 'sign'>;

/** The direction square to two others: first × second, right-handed. */
export function crossed(first: Direction, second: Direction): Direction {
  const [i, j] = [axes.indexOf(first.axis), axes.indexOf(second.axis)];
  const k = 3 - i - j;
  const turn = (j - i + 3) % 3 === 1 ? 1 : -1;
  return { axis: axes[k]!, sign: (first.sign * second.sign * turn) as 1 | -1 };
}

/** Where an axis of the part that lies across a line has its zero in the picture: on the line. */
export function zeroAcross({ axis, u, v }: SweepLine, across: Axis): number {
  return axesAcross(axis)[0] === across ? u : v;
}

/** Work in a lathe: along the bed from the headmost point, the second axis across upright, the back as it then comes. */
export function latheFrame(axis: Axis, sense: 1 | -1, zero: number, line: SweepLine): PictureFrame {
  const along: PictureAxis = { axis, sign: sense, zero };
  const second = axesAcross(axis)[1];
  const up: PictureAxis = { axis: second, sign: 1, zero: zeroAcross(line, second) };
  const back = crossed(up, along);
  return { along, up, back: { ...back, zero: zeroAcross(line, back.axis) } };
}
