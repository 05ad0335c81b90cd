import type { Place } from '../build/amount.ts';
import { axesAcross } from '../build/body-uses.ts';
import type { Casting } from '../build/casting.ts';
import { type Axis, axes } from '../build/station.ts';
import type { Reading } from '../plan/amounts.ts';
import type { Numbers } from '../plan/numbers.ts';
import { STAY } from '../solid/moves.ts';
import { SAME_MM } from '../solid/outline.ts';
import type { PatternPiece } from './pattern-piece.ts';
import type { PatternUnknown } from './pattern-unknown.ts';

/** Blocks that are cast on to hold the casting by. */
export function lugPieces(
  { lugs }: Pick<Casting, 'lugs'>,
  numbers: Numbers,
  reading: Reading,
): { readonly pieces: readonly PatternPiece[]; readonly unknown: readonly PatternUnknown[] } {
  const unknown: PatternUnknown[] = [];
  const pieces = lugs.flatMap(({ name, axis, ends, across }, i): readonly PatternPiece[] => {
    const spans = new Map<Axis, readonly [number, number]>();
    const span = (along: Axis, places: readonly [Place, Place], field: string) => {
      const known = places.map((place, end) => reading.place(place, `${field}/${end}`));
      for (const one of known) if (!one.ok) unknown.push(one.error);
      const [from, to] = known.map((one) =>
        one.ok ? numbers.place(one.value.station)!.at + one.value.beyond : undefined,
      );
      if (from === undefined || to === undefined) return;
      if (Math.abs(to - from) <= SAME_MM) unknown.push({ is: 'field', field });
      else spans.set(along, [Math.min(from, to), Math.max(from, to)]);
    };
    span(axis, ends, `lugs/${i}/ends`);
    axesAcross(axis).forEach((other, k) => {
      span(other, across[k as 0 | 1], `lugs/${i}/across/${k}`);
    });
    const [x, y, z] = axes.map((one) => spans.get(one));
    if (!x || !y || !z) return [];
    const corners = [
      { u: x[0], v: y[0], bulge: 0 },
      { u: x[1], v: y[0], bulge: 0 },
      { u: x[1], v: y[1], bulge: 0 },
      { u: x[0], v: y[1], bulge: 0 },
    ];
    return [
      {
        key: `lug/${i}`,
        name,
        body: undefined,
        is: 'lug',
        adds: true,
        cored: false,
        shape: { is: 'extrusion', axis: 'Z', a0: z[0], a1: z[1], outline: corners },
        moves: [STAY],
        taper: undefined,
      },
    ];
  });
  return { pieces, unknown };
}
