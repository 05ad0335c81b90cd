import { createHost } from '../src/renderer/engine/host.ts';
import { createMeasuringHost } from '../src/renderer/engine/measuring/measuring-host.ts';
import type { ToMeasuring } from '../src/renderer/engine/measuring/protocol.ts';
import type { FromWorker } from '../src/renderer/engine/protocol.ts';
import type { StationId } from '../src/shared/base/ids.ts';
import type { Dimension } from '../src/shared/build/dimension.ts';
import type { BuildRecord } from '../src/shared/build/records.ts';
import { loadKernel } from '../src/shared/solid/manifold/load-kernel.ts';
import { sketchBodies } from '../tests/support/sketch-bodies.ts';
import { goalLine, inWords, timesOf } from './measure.ts';
import { bedPlate } from './solids-part.ts';

// One dimension of a 50-body part is typed: how much work until the window has its answer, the figures of the new solid, its
// picture and its sheet; by processor time, in the order in which the window gets them.

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
let isMeasuring = true;
const held: ToMeasuring[] = [];
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
    // What is done in the measuring worker is not done here, but where that is what is measured.
    startMeasuring: (listener) => {
      const measuring = createMeasuringHost(listener, {
        later: (run) => void setTimeout(run, 0),
        loadKernel: async () => kernel,
      });
      return {
        post: (message) => {
          held.push(message);
          if (isMeasuring) for (const one of held.splice(0)) measuring(one);
        },
      };
    },
  },
);
const once = (): boolean => {
  const run = waiting;
  waiting = undefined;
  run?.();
  return run !== undefined;
};
const rest = async (): Promise<void> => {
  let idle = 0;
  while (idle < 50) {
    idle = once() ? 0 : idle + 1;
    await new Promise((go) => setTimeout(go, 0));
  }
};
const clock = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
let call = 0;
host({ type: 'load', call: ++call, records: JSON.stringify(records) });
once();
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

const dimensions = records.filter((record): record is Dimension => record.kind === 'dimension');
const sizes = dimensions.filter(({ measure }) => measure.type === 'size' && measure.form === 'diameter');
/** The thickness of the plate that all the other bodies stand on. */
const thickness = dimensions.filter(({ id }) => (id as string) === 'dimension:v-Z30');
if (thickness.length !== 1 || sizes.length === 0) throw new Error('The dimensions to be typed are not there.');

interface Edit {
  readonly answer: number;
  readonly solid: number;
  readonly picture: number;
}

function type(dimension: Dimension, value: string): void {
  seen = [];
  host({
    type: 'run',
    call: ++call,
    command: 'dimension-set',
    params: { changes: [{ dimension: dimension.id, set: { value } }] },
  });
}

/** Types another value, and lets all come of it that the engine's worker does. */
function typed(dimension: Dimension, value: string): Edit {
  const start = clock();
  type(dimension, value);
  const answer = clock() - start;
  while (once());
  const solid = clock() - start;
  if (!seen.includes('solid')) throw new Error('No solid came of the edit.');
  const before = clock();
  host({ type: 'ask', call: ++call, name: 'picture', params: { part, state: 'finished' } });
  return { answer, solid, picture: clock() - before };
}

const stepped = (dimension: Dimension, step: number): string => String(Number(dimension.value) + step);
const cases = [
  ['the diameter of several bosses or holes', sizes, 0.2],
  ['the thickness of the plate that all stand on', thickness, 0.5],
] as const;
isMeasuring = false;
for (const [what, list, by] of cases) {
  const edits: Edit[] = [];
  for (let run = -12; run < 36; run++) {
    const edit = typed(list[(run + 36) % list.length]!, stepped(list[(run + 36) % list.length]!, (1 + (run & 1)) * by));
    if (run >= 0) edits.push(edit);
  }
  const median = (name: keyof Edit): number => timesOf(edits.map((edit) => edit[name])).median;
  say(`part of 50 bodies, ${what} typed, ${edits.length} times:`);
  say(goalLine('  answer and tables', median('answer'), FRAME_MS));
  say(goalLine('  solid, its figures, all views and what the rules say', median('solid'), FRAME_MS));
  say(`          the slowest: ${inWords(Math.max(...edits.map(({ solid }) => solid)))}`);
  say(`          picture of it: ${inWords(median('picture'))}`);
}
isMeasuring = true;
for (const [what, list, by] of cases) {
  const times: number[] = [];
  for (let run = 0; run < 6; run++) {
    const start = clock();
    type(list[run % list.length]!, stepped(list[run % list.length]!, (3 + (run & 1)) * by));
    await rest();
    if (!seen.includes('sheet')) throw new Error('No sheet came of the edit.');
    times.push(clock() - start);
  }
  say(`all told with measuring and drawing the sheet, in a worker of their own, when ${what} is typed:`);
  say(`          ${inWords(timesOf(times).median)}`);
}
