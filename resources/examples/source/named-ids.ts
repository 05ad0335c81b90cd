import { type IdSource, idSource } from '../../../src/shared/base/ids.ts';

// FNV-1a, 32 bits (draft-eastlake-fnv): spreads names well enough that a few hundred ids of 50 bits do not clash.
function hash(text: string): number {
  let h = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(text)) h = Math.imul(h ^ byte, 0x01000193);
  return h >>> 0;
}

/**
 * Ids that follow from what the record is called, so that an example written anew keeps its ids wherever its names stay,
 * and both states of it share them.
 * @param path the full name of the record, such as `guide column/Z/foot`.
 */
export function idsFor(path: string): IdSource {
  let state = hash(path);
  // Mixing steps of splitmix32: a Weyl sequence through the finaliser of MurmurHash3.
  return idSource(() => {
    state = (state + 0x9e3779b9) | 0;
    let z = state;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return (z ^ (z >>> 16)) >>> 0;
  });
}
