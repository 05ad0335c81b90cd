import { nameKey } from '../formula/name-key.ts';
import { nearestName } from '../formula/nearest-name.ts';
import type { Reference } from '../formula/written.ts';
import type { TextProblem } from '../quantity/kind.ts';
import { bearersOf, entryOf, NOBODY, OF_PARTS, SEVERAL } from './name-table.ts';
import type { PartState, State } from './state.ts';

/** The entry of a part's name. */
export function partNameEntry(state: State, name: string): number {
  const entry = entryOf(state.names, OF_PARTS, nameKey(name), state.lastPartName);
  state.lastPartName = Math.max(entry, state.lastPartName);
  return entry;
}

/** The entry of the name of a part's dimension. */
export function dimensionNameEntry(state: State, part: PartState, name: string): number {
  const entry = entryOf(state.names, part.slot, nameKey(name), part.lastName);
  // Entries only grow: the newest is the highest.
  part.lastName = Math.max(entry, part.lastName);
  return entry;
}

/**
 * Ties one name of a formula of `part`. `heard` gathers the names on the way, so that the formula hears of changes.
 * @returns the slot of the dimension meant, or why it cannot be told.
 */
export function tie(
  state: State,
  part: PartState,
  reference: Reference,
  heard: number[],
  dimension: number,
): number | TextProblem {
  let home = part;
  const { names } = state;
  if (reference.part !== undefined) {
    const entry = partNameEntry(state, reference.part);
    heard.push(entry);
    const bearer = names.bearer[entry]!;
    if (bearer === SEVERAL) return problem('name-ambiguous', reference, { name: reference.part });
    if (bearer === NOBODY) {
      state.unknownParts.add(dimension);
      return problem('part-unknown', reference, near(reference.part, partNamesOf(state)));
    }
    home = state.partList[bearer]!;
  }
  const entry = dimensionNameEntry(state, home, reference.name);
  heard.push(entry);
  const bearer = names.bearer[entry]!;
  if (bearer === SEVERAL) return problem('name-ambiguous', reference, { name: reference.name });
  if (bearer === NOBODY) {
    home.unknowns ??= new Set();
    home.unknowns.add(dimension);
    return problem('name-unknown', reference, near(reference.name, namesOf(state, home)));
  }
  return bearer;
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
  part.sortedNames ??= written(state, part.lastName, (slot) => state.dimensions.records[slot]?.name);
  return part.sortedNames;
}

function partNamesOf(state: State): readonly string[] {
  state.sortedPartNames ??= written(state, state.lastPartName, (slot) => state.partList[slot]?.record?.name);
  return state.sortedPartNames;
}

/** Names as written, of all entries chained to the last. */
function written({ names }: State, last: number, nameOf: (slot: number) => string | undefined): string[] {
  const found: string[] = [];
  for (let entry = last; entry >= 0; entry = names.before[entry]!) {
    for (const slot of bearersOf(names, entry)) {
      const name = nameOf(slot);
      if (name !== undefined) found.push(name);
    }
  }
  return found.sort();
}
