import { err, ok, type Result } from '../base/result.ts';
import { nameKey } from '../formula/name-key.ts';
import { type Measure, type SizeForm, sizeForms } from './dimension.ts';
import type { Axis, Station } from './station.ts';
import { axes } from './station.ts';

/** What the texts under "from" and "to" turned out to name, or which of them is at fault. */
export type EndsProblem =
  | { readonly code: 'one-end' }
  | { readonly code: 'unknown' | 'ambiguous'; readonly end: 'from' | 'to'; readonly given: string }
  | { readonly code: 'same-station' }
  | { readonly code: 'different-axes' };

/** A size form by its word, upper and lower case alike. */
export const sizeFormNamed = (text: string): SizeForm | undefined => sizeForms.find((form) => form === nameKey(text));

/** `X/top` or `x top`: the axis written before a station's name, where two axes have one of that name. */
function splitAxis(text: string): { readonly axis: Axis | undefined; readonly name: string } {
  const match = /^\s*([xyz])\s*\/\s*(.+)$/i.exec(text);
  const axis = axes.find((known) => known === match?.[1]?.toUpperCase());
  return axis && match?.[2] ? { axis, name: nameKey(match[2]) } : { axis: undefined, name: nameKey(text) };
}

/** Stations that a text may mean: by the whole text as a name first, else by `axis/name`. */
function stationsMeant(stations: readonly Station[], text: string): readonly Station[] {
  const whole = stations.filter((station) => nameKey(station.name) === nameKey(text));
  if (whole.length > 0) return whole;
  const { axis, name } = splitAxis(text);
  return axis ? stations.filter((station) => station.axis === axis && nameKey(station.name) === name) : [];
}

/**
 * Reads the two ends of a dimension as a person writes them in a table: two stations, or a size form under "from" alone.
 * Where a name stands on several axes, the pair that shares an axis is meant; where more than one does, `prefer`.
 */
export function readEnds(
  stations: readonly Station[],
  fromText: string,
  toText: string,
  prefer: Axis | undefined,
): Result<Measure, EndsProblem> {
  const form = sizeFormNamed(fromText);
  if (toText.trim() === '' && form) return ok({ type: 'size', form });
  if (fromText.trim() === '' || toText.trim() === '') return err({ code: 'one-end' });
  const froms = stationsMeant(stations, fromText);
  const tos = stationsMeant(stations, toText);
  if (froms.length === 0) return err({ code: 'unknown', end: 'from', given: fromText });
  if (tos.length === 0) return err({ code: 'unknown', end: 'to', given: toText });
  const pairs = froms.flatMap((from) => tos.filter((to) => to.axis === from.axis).map((to) => [from, to] as const));
  if (pairs.length === 0) return err({ code: 'different-axes' });
  const preferred = pairs.filter(([from]) => from.axis === prefer);
  const meant = pairs.length > 1 && preferred.length > 0 ? preferred : pairs;
  const [pair] = meant;
  if (meant.length > 1 || !pair) return err({ code: 'ambiguous', end: 'from', given: fromText });
  if (pair[0].id === pair[1].id) return err({ code: 'same-station' });
  return ok({ type: 'between', from: pair[0].id, to: pair[1].id });
}
