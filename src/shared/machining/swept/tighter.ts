import { assert } from '../../base/assert.ts';
import type { Piece, SweptProfile } from '../setup-check.ts';
import { distinct } from './sweep-pieces.ts';

/**
 * What two profiles of the same solid about the same line say together: the smaller `most`, the greater `least`. Where both say
 * nothing beyond an end of theirs, there is nothing. The piece is that of the smaller `most`; where that one names none, the other's.
 */
export function tighter(a: SweptProfile, b: SweptProfile): SweptProfile {
  assert(a.axis === b.axis, 'profiles about one line');
  const edges = distinct([...a.edges, ...b.edges]);
  const pieces: Piece[] = [...a.pieces, ...b.pieces];
  const cells = Math.max(0, edges.length - 1);
  const [most, least, by] = [new Float64Array(cells), new Float64Array(cells), new Int32Array(cells).fill(-1)];
  let [i, j] = [0, 0];
  for (let k = 0; k < cells; k++) {
    const middle = (edges[k]! + edges[k + 1]!) / 2;
    while (i < a.most.length && a.edges[i + 1]! <= middle) i++;
    while (j < b.most.length && b.edges[j + 1]! <= middle) j++;
    // Before the first cell and after the last one a profile says that nothing is there.
    const inA = i < a.most.length && a.edges[i]! <= middle;
    const inB = j < b.most.length && b.edges[j]! <= middle;
    const [mostA, mostB] = [inA ? a.most[i]! : 0, inB ? b.most[j]! : 0];
    most[k] = Math.min(mostA, mostB);
    const whole = (profile: SweptProfile, cell: number) =>
      profile.edges[cell]! >= edges[k]! && profile.edges[cell + 1]! <= edges[k + 1]!;
    // A known point lies somewhere in its cell: in which part of one that is cut here, nobody knows.
    least[k] = Math.min(most[k]!, Math.max(inA && whole(a, i) ? a.least[i]! : 0, inB && whole(b, j) ? b.least[j]! : 0));
    const byA = inA ? a.by[i]! : -1;
    const byB = inB && b.by[j]! >= 0 ? a.pieces.length + b.by[j]! : -1;
    const [first, second] = mostA <= mostB ? [byA, byB] : [byB, byA];
    by[k] = most[k] === 0 ? -1 : first >= 0 ? first : second;
  }
  return { axis: a.axis, edges: Float64Array.from(edges), most, least, by, pieces };
}
