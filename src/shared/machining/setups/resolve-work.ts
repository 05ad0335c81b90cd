import type { PartId, StationId } from '../../base/ids.ts';
import type { Fellow, PartCondition, Setup } from '../../build/setup.ts';
import { type Reading, readingOf } from '../../plan/amounts.ts';
import { AS_DRAWN, type Numbers } from '../../plan/numbers.ts';
import type { Unknown } from '../../plan/unknown.ts';
import { distinctUnknowns } from '../../plan/unknown.ts';
import { bodyRecipe, type FellowPlace, fellowPlace } from './body-recipe.ts';
import { type BodiesThere, bodiesThere } from './condition.ts';
import { fixtureRecipe } from './fixture-recipe.ts';
import { type ChangedNumbers, changedNumbers, type Recipe } from './recipe.ts';
import type { PartInput, SetupInput } from './setup-input.ts';
import { createWorlds, type Worlds } from './world.ts';

/** What is put into the machine, as far as it is known. */
export interface ResolvedWork {
  /** Undefined where something that it needs is unknown: then nothing is judged. */
  readonly worlds: Worlds | undefined;
  readonly unknown: readonly Unknown[];
  readonly reading: Reading;
  /** Stock on surfaces still to be machined, mm. */
  readonly allowanceMm: number;
}

/** The work of a set-up: bodies of its part and of its fellows in their conditions, with stock, and what is fixed to them. */
export function resolveWork(input: SetupInput): ResolvedWork {
  const { setup, numbers, lengthUnit } = input;
  const reading = readingOf(numbers, lengthUnit);
  const unknown: Unknown[] = [];
  const drawn = changedNumbers(numbers, AS_DRAWN);
  const allowance = reading.plain(setup.allowance, 'allowance');
  const allowanceMm = allowance.ok && (allowance.value ?? 0) >= 0 ? (allowance.value ?? 0) : 0;
  if (!allowance.ok) unknown.push(allowance.error);
  else if ((allowance.value ?? 0) < 0) unknown.push({ is: 'written', field: 'allowance', text: setup.allowance });

  const through = setup.line.through;
  for (const station of through ?? []) if (!numbers.place(station)) unknown.push({ is: 'station', station });
  const recipes: Recipe[] = [];
  const add = (part: PartId, condition: PartCondition, fellow: FellowPlace | undefined) => {
    const there = input.partOf(part);
    if (there) recipes.push(...recipesOf(there, condition, input, drawn, allowanceMm, fellow, unknown));
  };
  add(setup.part, setup.state, undefined);
  for (const fellow of setup.fellows) {
    const missing = fellow.meets.flat().filter((station) => !numbers.place(station));
    for (const station of missing) unknown.push({ is: 'station', station });
    if (missing.length === 0) add(fellow.part, fellow.state, fellowPlace(fellow));
  }
  setup.fixtures.forEach((fixture, i) => {
    const recipe = fixtureRecipe(fixture, i, setup.line, numbers, reading, drawn);
    if (recipe.ok) recipes.push(recipe.value);
    else unknown.push(...recipe.error);
  });
  if (unknown.length === 0 && !recipes.some(({ adds }) => adds)) unknown.push({ is: 'field', field: 'part' });
  const known = distinctUnknowns(unknown);
  const worlds = known.length > 0 ? undefined : createWorlds({ numbers, axis: setup.line.axis, through, recipes });
  return { worlds, unknown: known, reading, allowanceMm };
}

function recipesOf(
  part: PartInput,
  condition: PartCondition,
  { numbers }: SetupInput,
  drawn: ChangedNumbers,
  allowanceMm: number,
  fellow: FellowPlace | undefined,
  unknown: Unknown[],
): readonly Recipe[] {
  const { there, withStock } = bodiesOf(part, condition, numbers);
  return there.flatMap((body) => {
    const grow = withStock.has(body.record.id) ? allowanceMm : 0;
    const recipe = bodyRecipe(body, numbers, drawn, grow, fellow);
    if (recipe) return [recipe];
    // What takes away and has no shape leaves more metal: nothing is promised too much.
    if (body.record.adds) unknown.push(...missingOf(body));
    return [];
  });
}

/** The bodies of a part in a condition. */
export function bodiesOf(part: PartInput, condition: PartCondition, numbers: Numbers): BodiesThere {
  const isCentreline = (id: StationId): boolean => {
    const station = numbers.record(id);
    return station?.kind === 'station' && station.form === 'centreline';
  };
  return bodiesThere(part.bodies, condition, part.operations, isCentreline);
}

/** Why a body that adds has no shape: the body, then the stations and sizes that it lacks. */
function missingOf({ record, problem }: PartInput['bodies'][number]): readonly Unknown[] {
  const body: Unknown = { is: 'body', body: record.id };
  if (problem?.why !== 'not-placed') return [body];
  return [
    body,
    ...problem.stations.map((station): Unknown => ({ is: 'station', station })),
    ...problem.dimensions.map((dimension): Unknown => ({ is: 'dimension', dimension })),
  ];
}

/** Parts that are held in a set-up, the first being the one worked upon. */
export const partsHeld = ({ part, fellows }: Setup): readonly PartId[] => [
  ...new Set([part, ...fellows.map((fellow: Fellow) => fellow.part)]),
];
