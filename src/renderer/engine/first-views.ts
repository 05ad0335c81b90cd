import type { PartId } from '../../shared/base/ids.ts';
import type { Scene, View } from './view.ts';
import { type ViewName, type ViewParams, views } from './views.ts';

/** The views that a window shows first, worked out another time from the same records by the same engine. */
export interface FirstViews {
  /** The part that comes first. */
  readonly first: PartId | undefined;
  /** Models by the keys that they are watched under. */
  readonly models: ReadonlyMap<string, unknown>;
}

/** A key under which a view is watched: its name, a space, and its parameters as JSON. */
export const viewKey = (name: string, params: unknown): string => `${name} ${JSON.stringify(params) ?? ''}`;

type Named = { readonly [N in ViewName]: readonly [name: N, params: ViewParams<N>] }[ViewName];

/** What the window shows of a build that was opened just now: the lists beside the first part, and that part. */
const shownFirst = (first: PartId | undefined): readonly Named[] => [
  ['summary', null],
  ['findings', { part: null }],
  ...(first === undefined ? [] : ([['part', { part: first }]] as const)),
];

/**
 * The first views as text. The scene must be as it was loaded: then they are what the next loading will show.
 * @returns undefined when text would not carry them: a number that is none, or a gap in a list.
 */
export function writeFirstViews(scene: Scene): string | undefined {
  const first = scene.index.parts()[0]?.id;
  const models = shownFirst(first).map(([name, params]) => {
    const key = viewKey(name, params);
    const view = views[name] as View<never, unknown>;
    return [key, view.open(key)(scene, params as never, undefined)];
  });
  let isCarried = true;
  const text = JSON.stringify({ first, models }, function (this: unknown, _key: string, value: unknown) {
    if (typeof value === 'number' ? !Number.isFinite(value) : value === undefined && Array.isArray(this))
      isCarried = false;
    return value;
  });
  return isCarried ? text : undefined;
}

/** @param text as {@link writeFirstViews} gave it: the shell makes sure of that. A field that is undefined is absent. */
export function readFirstViews(text: string): FirstViews {
  const { first, models } = JSON.parse(text) as { first?: PartId; models: [string, unknown][] };
  return { first, models: new Map(models) };
}
