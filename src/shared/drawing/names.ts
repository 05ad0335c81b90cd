import { nameKey } from '../formula/name-key.ts';
import { nearestName } from '../formula/nearest-name.ts';
import type { Reference } from '../formula/written.ts';
import type { TextProblem } from '../quantity/kind.ts';
import { appended, type NameEntry, type PartState, type State } from './state.ts';

export function entryOf(names: Map<string, NameEntry>, key: string): NameEntry {
  const known = names.get(key);
  if (known) return known;
  const made: NameEntry = { bearer: -1, bearers: undefined, mentions: undefined };
  names.set(key, made);
  return made;
}

export function addBearer(entry: NameEntry, slot: number): void {
  if (entry.bearer === -1) {
    entry.bearer = slot;
  } else if (entry.bearers) {
    entry.bearers.push(slot);
  } else {
    entry.bearers = [entry.bearer, slot];
    entry.bearer = -2;
  }
}

export function dropBearer(entry: NameEntry, slot: number): void {
  if (entry.bearer === slot) {
    entry.bearer = -1;
    return;
  }
  if (!entry.bearers) return;
  const left = entry.bearers.filter((other) => other !== slot);
  if (left.length === 1) {
    entry.bearer = left[0]!;
    entry.bearers = undefined;
  } else {
    entry.bearers = left;
  }
}

export function addMention(entry: NameEntry, slot: number): void {
  entry.mentions = appended(entry.mentions, slot);
}

export function dropMention(entry: NameEntry, slot: number): void {
  const list = entry.mentions;
  const at = list?.lastIndexOf(slot) ?? -1;
  if (!list || at < 0) return;
  list[at] = list[list.length - 1]!;
  list.pop();
}

/**
 * Ties one name of a formula of `part`. `heard` gathers the names on the way, so that the formula hears of changes.
 * @returns the slot of the dimension meant, or why it cannot be told.
 */
export function tie(
  state: State,
  part: PartState,
  reference: Reference,
  heard: NameEntry[],
  dimension: number,
): number | TextProblem {
  let home = part;
  if (reference.part !== undefined) {
    const entry = entryOf(state.partNames, nameKey(reference.part));
    heard.push(entry);
    if (entry.bearer === -2) return problem('name-ambiguous', reference, { name: reference.part });
    if (entry.bearer === -1) {
      state.unknownParts.add(dimension);
      return problem('part-unknown', reference, near(reference.part, partNamesOf(state)));
    }
    home = state.partList[entry.bearer]!;
  }
  const entry = entryOf(home.names, nameKey(reference.name));
  heard.push(entry);
  if (entry.bearer === -2) return problem('name-ambiguous', reference, { name: reference.name });
  if (entry.bearer === -1) {
    home.unknowns.add(dimension);
    return problem('name-unknown', reference, near(reference.name, namesOf(state, home)));
  }
  return entry.bearer;
}

type ProblemData = NonNullable<TextProblem['data']>;

const problem = (code: string, { start, end }: Reference, data: ProblemData): TextProblem => ({
  code,
  start,
  end,
  data,
});

function near(name: string, names: readonly string[]): ProblemData {
  const nearest = nearestName(name, names);
  return nearest === undefined ? { name } : { name, nearest };
}

// Sorted as text, not as listed: which of two equally near names is offered then does not hang on the list's order.
function namesOf(state: State, part: PartState): readonly string[] {
  part.sortedNames ??= written(part.names, (slot) => state.dimensions.records[slot]?.name);
  return part.sortedNames;
}

function partNamesOf(state: State): readonly string[] {
  state.sortedPartNames ??= written(state.partNames, (slot) => state.partList[slot]?.record?.name);
  return state.sortedPartNames;
}

function written(names: ReadonlyMap<string, NameEntry>, nameOf: (slot: number) => string | undefined): string[] {
  const found: string[] = [];
  for (const entry of names.values()) {
    for (const slot of entry.bearers ?? [entry.bearer]) {
      const name = slot < 0 ? undefined : nameOf(slot);
      if (name !== undefined) found.push(name);
    }
  }
  return found.sort();
}
