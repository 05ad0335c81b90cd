import type { DimensionId, StationId } from '../../base/ids.ts';
import { err, ok, type Result } from '../../base/result.ts';
import type { Fixture, Setup } from '../../build/setup.ts';
import type { KnownAmount, Reading } from '../../plan/amounts.ts';
import type { Numbers } from '../../plan/numbers.ts';
import type { Unknown } from '../../plan/unknown.ts';
import { STAY } from '../../solid/moves.ts';
import type { ExactShape } from '../../solid/placed.ts';
import { type ChangedNumbers, dimensionsBehind, type Recipe, shifting } from './recipe.ts';

type Pair = readonly [number, number];

/**
 * What is fixed to the work, about the set-up's line: round about it, or a block that lies so far from it. Ends may stand in
 * either order.
 */
export function fixtureRecipe(
  fixture: Fixture,
  index: number,
  { axis, through }: Setup['line'],
  numbers: Numbers,
  reading: Reading,
  drawn: ChangedNumbers,
): Result<Recipe, readonly Unknown[]> {
  const field = `fixtures/${index}`;
  const unknown: Unknown[] = [];
  const take = <T>(read: Result<T, Unknown>): T | undefined => {
    if (read.ok) return read.value;
    unknown.push(read.error);
    return undefined;
  };
  const from = take(reading.place(fixture.ends[0], `${field}/ends/0`));
  const to = take(reading.place(fixture.ends[1], `${field}/ends/1`));
  const section = sectionOf(fixture, field, reading, take);
  if (!through) unknown.push({ is: 'line' });
  if (!from || !to || !section || !through || unknown.length > 0) return err(unknown);
  const stations: readonly StationId[] = [from.station, to.station, ...through];
  const sizes: readonly DimensionId[] =
    section.is === 'round' && section.diameter.is === 'size' ? [section.diameter.dimension] : [];
  const shapeIn = (now: ChangedNumbers): ExactShape | undefined => {
    const [a, b] = [now.place(from), now.place(to)];
    const [a0, a1] = [Math.min(a, b), Math.max(a, b)];
    const [u, v] = [now.at(through[0]), now.at(through[1])];
    if (!(a1 > a0)) return undefined;
    if (section.is === 'block') return blockOf(axis, a0, a1, u, v, section.across);
    const r = now.amount(section.diameter) / 2;
    if (!(r > 0)) return undefined;
    return {
      is: 'turned',
      axis,
      u,
      v,
      outline: [
        { a: a0, r: 0 },
        { a: a1, r: 0 },
        { a: a1, r },
        { a: a0, r },
      ],
    };
  };
  const shape = shapeIn(drawn);
  if (!shape) return err([{ is: 'field', field: `${field}/ends` }]);
  return ok({
    piece: { is: 'fixture', index },
    adds: true,
    grow: 0,
    drawn: { shape, moves: [STAY] },
    dimensions: dimensionsBehind(numbers, stations, sizes),
    shiftFor: shifting(numbers, stations, sizes),
    make(now) {
      const made = shapeIn(now);
      return made && { shape: made, moves: [STAY] };
    },
  });
}

type Section =
  | { readonly is: 'round'; readonly diameter: KnownAmount }
  | { readonly is: 'block'; readonly across: readonly [Pair, Pair] };

function sectionOf(
  { shape }: Fixture,
  field: string,
  reading: Reading,
  take: <T>(read: Result<T, Unknown>) => T | undefined,
): Section | undefined {
  if (shape.is === 'round') {
    const diameter = take(reading.amount(shape.diameter, 'diameter', `${field}/shape/diameter`));
    return diameter && { is: 'round', diameter };
  }
  const across = shape.across.map((pair, i): Pair | undefined => {
    const [low, high] = pair.map((text, j): number | undefined => {
      const at = `${field}/shape/across/${i}/${j}`;
      const read = reading.plain(text, at);
      if (read.ok && read.value === undefined) return take(err({ is: 'field', field: at }));
      return take(read);
    });
    if (low === undefined || high === undefined) return undefined;
    if (low === high) return take(err({ is: 'field', field: `${field}/shape/across/${i}/1` }));
    return [Math.min(low, high), Math.max(low, high)];
  });
  const [first, second] = across;
  return first && second && { is: 'block', across: [first, second] };
}

const blockOf = (
  axis: Setup['line']['axis'],
  a0: number,
  a1: number,
  u: number,
  v: number,
  [[u0, u1], [v0, v1]]: readonly [Pair, Pair],
): ExactShape => ({
  is: 'extrusion',
  axis,
  a0,
  a1,
  outline: [
    { u: u + u0, v: v + v0, bulge: 0 },
    { u: u + u1, v: v + v0, bulge: 0 },
    { u: u + u1, v: v + v1, bulge: 0 },
    { u: u + u0, v: v + v1, bulge: 0 },
  ],
});
