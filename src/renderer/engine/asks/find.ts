import type { PartId } from '../../../shared/base/ids.ts';
import type { RecordId } from '../../../shared/build/records.ts';
import { nameKey } from '../../../shared/formula/name-key.ts';
import type { Ask } from '../view.ts';

export interface Found {
  readonly id: RecordId;
  readonly kind: 'part' | 'station' | 'dimension' | 'body';
  readonly name: string;
  readonly part: PartId;
  readonly partName: string;
}

const MOST = 60;

/** Parts, stations, dimensions and bodies whose names hold every typed word; names that begin with the text come first. */
export const findAsk: Ask<{ readonly text: string }, readonly Found[]> = (scene, { text }) => {
  const words = nameKey(text).split(' ').filter(Boolean);
  if (words.length === 0) return [];
  const first: Found[] = [];
  const rest: Found[] = [];
  const look = (found: Found, extra: string) => {
    const name = nameKey(found.name);
    const key = `${name} ${nameKey(extra)}`;
    if (words.every((word) => key.includes(word))) (name.startsWith(words[0] ?? '') ? first : rest).push(found);
  };
  for (const part of scene.index.parts()) {
    const home = { part: part.id, partName: part.name };
    look({ id: part.id, kind: 'part', name: part.name, ...home }, part.number);
    for (const station of scene.index.stationsOf(part.id))
      look({ id: station.id, kind: 'station', name: station.name, ...home }, part.name);
    for (const dimension of scene.index.dimensionsOf(part.id))
      look({ id: dimension.id, kind: 'dimension', name: dimension.name, ...home }, part.name);
    for (const body of scene.index.bodiesOf(part.id))
      look({ id: body.id, kind: 'body', name: body.name, ...home }, part.name);
  }
  return [...first, ...rest].slice(0, MOST);
};
