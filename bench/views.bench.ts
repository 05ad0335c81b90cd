import { createHost } from '../src/renderer/engine/host.ts';
import type { FromWorker } from '../src/renderer/engine/protocol.ts';
import type { StationId } from '../src/shared/base/ids.ts';
import type { Dimension } from '../src/shared/build/dimension.ts';
import type { BuildRecord } from '../src/shared/build/records.ts';
import { loadKernel } from '../src/shared/solid/manifold/load-kernel.ts';
import { sketchBodies } from '../tests/support/sketch-bodies.ts';
import { goalLine, inWords, timesOf } from './measure.ts';
import { bedPlate } from './solids-part.ts';

// One dimension of a 50-body part is typed: how long until the window has its answer, the figures of the new solid, its
// picture and its sheet; all in the worker, in the order in which the window gets them.

const FRAME_MS = 16;
const say = (line: string): void => console.log(line);

/** The bed plate as a drawing: its bodies stand on stations and sizes. */
function drawn(count: number): { readonly records: readonly BuildRecord[]; readonly part: string } {
  const s = sketchBodies('v');
  const point = (x: number, y: number): [StationId, StationId] => [s.at('X', x), s.at('Y', y)];
  for (const body of bedPlate(count)) {
    if (body.is === 'block') {
      const pair = (axis: 'X' | 'Y' | 'Z', k: 0 | 1 | 2): [StationId, StationId] => [
        s.at(axis, body.from[k]),
        s.at(axis, body.to[k]),
      ];
      s.body({ type: 'block', x: pair('X', 0), y: pair('Y', 1), z: pair('Z', 2) }, { adds: body.adds });
      continue;
    }
    const ends: [StationId, StationId] = [s.at('Z', body.z[0]), s.at('Z', body.z[1])];
    const centre = point(body.x, body.y);
    const diameter = s.size('diameter', 2 * body.radius);
    s.body({ type: 'cylinder', axis: 'Z', ends, centre, diameter }, { adds: body.adds });
  }
  return { records: s.records(), part: s.part.id };
}

const kernel = await loadKernel();
const { records, part } = drawn(50);
let waiting: (() => void) | undefined;
let seen: string[] = [];
const host = createHost(
  (message: FromWorker) => {
    if (message.type === 'broken') throw new Error(message.message);
    seen.push(...(message.type === 'views' ? message.changes.map(({ key }) => key.split(' ')[0]!) : [message.type]));
  },
  {
    newId: (kind) => `${kind}:0000000000` as never,
    now: () => '2026-01-01T00:00:00.000Z',
    later: (run) => {
      waiting = run;
      return () => {
        if (waiting === run) waiting = undefined;
      };
    },
    loadKernel: async () => kernel,
  },
);
const once = (): boolean => {
  const run = waiting;
  waiting = undefined;
  run?.();
  return run !== undefined;
};
const rest = async (): Promise<void> => {
  while (once());
  await new Promise((go) => setTimeout(go, 0));
  while (once());
};
let call = 0;
host({ type: 'load', call: ++call, records: JSON.stringify(records) });
for (const [name, params] of [
  ['summary', null],
  ['findings', { part }],
  ['part', { part }],
  ['bodies', { part }],
  ['solid', { part }],
  ['sheet', { part, state: 'finished', projection: 'first' }],
] as const)
  host({ type: 'watch', key: `${name} ${JSON.stringify(params)}`, name, params });
await rest();

const sizes = records.filter(
  (record): record is Dimension =>
    record.kind === 'dimension' && record.measure.type === 'size' && record.measure.form === 'diameter',
);
const times: Record<'answer' | 'solid' | 'picture' | 'sheet', number[]> = {
  answer: [],
  solid: [],
  picture: [],
  sheet: [],
};
for (let run = -4; run < 24; run++) {
  const dimension = sizes[(run + 24) % sizes.length]!;
  const value = String(Number(dimension.value) + (run % 2 === 0 ? 0.2 : 0));
  seen = [];
  const start = performance.now();
  host({
    type: 'run',
    call: ++call,
    command: 'dimension-set',
    params: { changes: [{ dimension: dimension.id, set: { value } }] },
  });
  const answered = performance.now();
  if (value === dimension.value && run % 2 === 0) throw new Error('The edit changes nothing.');
  let solid: number | undefined;
  let sheet: number | undefined;
  let picture = 0;
  while (once()) {
    if (solid === undefined && seen.includes('solid')) {
      solid = performance.now() - start;
      const before = performance.now();
      host({ type: 'ask', call: ++call, name: 'picture', params: { part, state: 'finished' } });
      picture = performance.now() - before;
    }
    if (sheet === undefined && seen.includes('sheet')) sheet = performance.now() - start - picture;
  }
  if (run < 0 || solid === undefined || sheet === undefined) continue;
  times.answer.push(answered - start);
  times.solid.push(solid);
  times.picture.push(picture);
  times.sheet.push(sheet);
}
const median = (name: keyof typeof times): number => timesOf(times[name]).median;
say(`part of 50 bodies, one dimension typed, ${times.solid.length} times:`);
say(goalLine('  answer and tables', median('answer'), FRAME_MS));
say(goalLine('  solid, its figures and what the rules say of it', median('solid'), FRAME_MS));
say(`          picture of it: ${inWords(median('picture'))}`);
say(`          sheet in three views, all told: ${inWords(median('sheet'))}`);
