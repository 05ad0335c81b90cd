import { createHost } from '../src/renderer/engine/host.ts';
import type { FromWorker, ToWorker } from '../src/renderer/engine/protocol.ts';
import { idSource } from '../src/shared/base/ids.ts';
import type { BuildRecord } from '../src/shared/build/records.ts';
import { goalLine, inWords, timesOf } from './measure.ts';
import { DIMENSIONS_PER_PART, syntheticBuild } from './synthetic-build.ts';

// The engine behind the window, without the window: the whole check of a build of 10 000 dimensions in 500 parts (drawing,
// rules, gates, and every view that a window shows), the first time and after one edit.

const DIMENSIONS = 10_000;
const EDITS = 400;
const WARM_UP = 100;
const COLD_WITHIN_MS = 2_000;
const FRAME_MS = 1_000 / 60;

const say = (line: string): void => console.log(line);
const synthetic = syntheticBuild(DIMENSIONS);
const records = JSON.stringify([...synthetic.build.values()] satisfies BuildRecord[]);
const first = synthetic.dimensions[0]!.record;

let posted: FromWorker[] = [];
const waiting: (() => void)[] = [];
// A linear congruential generator (Numerical Recipes): the same ids every time.
let random = 7;
function nextRandom(): number {
  random = (Math.imul(random, 1_664_525) + 1_013_904_223) >>> 0;
  return random;
}
const handle = createHost((message) => posted.push(message), {
  newId: idSource(nextRandom),
  now: () => '2026-01-01T00:00:00.000Z',
  later: (run) => {
    waiting.push(run);
    return () => {
      const at = waiting.indexOf(run);
      if (at >= 0) waiting.splice(at, 1);
    };
  },
});

/** Handles a message and all the work that waits behind it. @returns ms until the window would have every view. */
function timeOf(message: ToWorker): number {
  posted = [];
  const start = performance.now();
  handle(message);
  for (let run = waiting.shift(); run !== undefined; run = waiting.shift()) run();
  const time = performance.now() - start;
  for (const answer of posted) if (answer.type === 'broken') throw new Error(answer.message);
  return time;
}

function watch(name: string, params: unknown): void {
  timeOf({ type: 'watch', key: `${name} ${JSON.stringify(params)}`, name, params });
}

watch('summary', null);
watch('part', { part: first.part });
watch('findings', { part: null });
watch('links', null);

say(`${DIMENSIONS} dimensions in ${DIMENSIONS / DIMENSIONS_PER_PART} parts, the engine alone:`);
const cold = timeOf({ type: 'load', call: 0, records });
const shown = posted.flatMap((message) => (message.type === 'views' ? message.changes.map(({ key }) => key) : []));
if (!shown.some((key) => key.startsWith('findings '))) throw new Error('No findings came of the check.');
say(goalLine('whole check, the first time', cold, COLD_WITHIN_MS));

const plain = synthetic.dimensions.filter(({ number }) => number !== undefined);
const times: number[] = [];
for (let i = 0; i < EDITS; i++) {
  const { record, number } = plain[(i * 7919) % plain.length]!;
  const set = { value: String(Math.round((number! + ((i % 9) - 4) / 2) * 1000) / 1000) };
  const params = { changes: [{ dimension: record.id, set }] };
  times.push(timeOf({ type: 'run', call: i + 1, command: 'dimension-set', params }));
}
const { median, p99 } = timesOf(times.slice(WARM_UP));
say(goalLine('one edit, until every view is sent', median, FRAME_MS));
say(goalLine('one edit, 99 of 100', p99, FRAME_MS));
say(`  the quickest ${inWords(Math.min(...times))}`);
