/**
 * Finds the slot of an id. A table of integers beside the list of ids: the engine's own maps of texts keep three
 * pointers for each entry, and filling and collecting those was a third of the time that a large build took to open.
 */
export interface SlotTable {
  /** @returns undefined for an id that was never added. */
  get(id: string): number | undefined;
  /** @param slot where the id stands in the list that the table was made over; it must not have been added yet. */
  add(id: string, slot: number): void;
}

/** Ids differ in what stands after the colon: ten characters. */
const CHARACTERS = 10;

// FNV-1a (Fowler, Noll, Vo; the 32-bit constants of RFC 9923), and a last mixing, as the lowest bits choose the place.
function hashOf(id: string): number {
  let hash = 0x811c9dc5;
  for (let i = Math.max(0, id.length - CHARACTERS); i < id.length; i++) {
    hash = Math.imul(hash ^ id.charCodeAt(i), 0x01000193);
  }
  return hash ^ (hash >>> 15);
}

const FREE = 0;

/**
 * Open addressing with linear probing, at most half full.
 * @param ids the ids by slot; owned by the caller, who puts an id there before adding it.
 * @param count how many ids to make room for at once.
 */
export function createSlotTable(ids: readonly (string | undefined)[], count: number): SlotTable {
  let places = placesFor(count);
  let held = 0;

  /** The place of an id: where it stands, or the free one where it would. */
  function placeOf(id: string): number {
    const last = places.length - 1;
    let place = hashOf(id) & last;
    for (;;) {
      const entry = places[place]!;
      if (entry === FREE || ids[entry - 1] === id) return place;
      place = (place + 1) & last;
    }
  }

  function widen(): void {
    const old = places;
    places = new Int32Array(old.length * 2);
    for (const entry of old) if (entry !== FREE) places[placeOf(ids[entry - 1]!)] = entry;
  }

  return {
    get(id) {
      const entry = places[placeOf(id)]!;
      return entry === FREE ? undefined : entry - 1;
    },
    add(id, slot) {
      held++;
      if (held * 2 > places.length) widen();
      places[placeOf(id)] = slot + 1;
    },
  };
}

function placesFor(count: number): Int32Array<ArrayBuffer> {
  let size = 64;
  while (size < count * 2) size *= 2;
  return new Int32Array(size);
}
