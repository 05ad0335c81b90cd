import { ok, type Result } from '../../shared/base/result.ts';
import { partsNamed, partsOf, recordOf, setupsOf, stationsOf } from '../../shared/build/look-up.ts';
import type { Part } from '../../shared/build/part.ts';
import type { Build } from '../../shared/build/records.ts';
import type { Setup } from '../../shared/build/setup.ts';
import type { Station } from '../../shared/build/station.ts';
import { nameKey } from '../../shared/formula/name-key.ts';
import { nearestName } from '../../shared/formula/nearest-name.ts';
import { type CallProblem, problem } from './verb.ts';

const didYouMean = (name: string, names: readonly string[]): string => {
  const nearest = nearestName(name, names);
  return nearest === undefined ? `It has: ${names.join(', ') || 'none'}.` : `Did you mean "${nearest}"?`;
};

/** A part by its name, or by its id where two share a name. */
export function findPart(build: Build, text: string): Result<Part, CallProblem> {
  const byId = recordOf(build, 'part', text);
  if (byId) return ok(byId);
  const named = partsNamed(build, text);
  const [first] = named;
  if (named.length > 1) {
    return problem(
      text,
      `${named.length} parts have this name.`,
      `Use an id: ${named.map(({ id }) => id).join(', ')}.`,
    );
  }
  if (first) return ok(first);
  return problem(
    text,
    'The build has no such part.',
    didYouMean(
      text,
      partsOf(build).map(({ name }) => name),
    ),
  );
}

/** A set-up by its name, of a part where that is said, or by its id. */
export function findSetup(
  build: Build,
  text: string,
  partText: string | undefined,
): Result<{ readonly part: Part; readonly setup: Setup }, CallProblem> {
  const of = partText === undefined ? undefined : findPart(build, partText);
  if (of && !of.ok) return of;
  const parts = of ? [of.value] : partsOf(build);
  const all = parts.flatMap((part) => setupsOf(build, part.id).map((setup) => ({ part, setup })));
  const key = nameKey(text);
  const found = all.filter(({ setup }) => setup.id === text || nameKey(setup.name) === key);
  const [first] = found;
  if (found.length > 1) {
    const ids = found.map(({ part, setup }) => `${setup.id} of ${part.name}`).join(', ');
    const names = new Set(found.map(({ part }) => part.id));
    const how = names.size > 1 ? 'Name the part behind it, or use an id' : 'Use an id';
    return problem(text, `${found.length} set-ups have this name.`, `${how}: ${ids}.`);
  }
  if (first) return ok(first);
  const names = all.map(({ setup }) => setup.name);
  const where = of ? of.value.name : 'The build';
  return problem(text, `${where} has no such set-up.`, didYouMean(text, names));
}

/** A station written as `part/axis/station`, for example `guide column/Z/top`; names may hold strokes themselves. */
export function findStation(build: Build, text: string): Result<{ part: Part; station: Station }, CallProblem> {
  const key = nameKey(text);
  const parts = partsOf(build).filter(({ name }) => key.startsWith(`${nameKey(name)}/`));
  const found = parts.flatMap((part) =>
    stationsOf(build, part.id)
      .filter(({ axis, name }) => key === nameKey(`${part.name}/${axis}/${name}`))
      .map((station) => ({ part, station })),
  );
  const [first] = found;
  if (found.length > 1) return problem(text, 'More than one station goes by this.', 'Rename all but one of them.');
  if (first) return ok(first);
  const written = 'Write it as part/axis/station, for example "guide column/Z/top".';
  const [part] = parts;
  if (!part) {
    const names = partsOf(build).map(({ name }) => name);
    const given = text.slice(0, Math.max(0, text.indexOf('/')));
    return problem(
      text,
      'The build has no such part.',
      given === '' ? written : `${didYouMean(given, names)} ${written}`,
    );
  }
  const names = stationsOf(build, part.id).map(({ axis, name }) => `${axis}/${name}`);
  const given = text.slice(part.name.length + 1);
  return problem(text, `${part.name} has no such station.`, `${didYouMean(given, names)} ${written}`);
}
