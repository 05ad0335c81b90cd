import type { Dimension } from '../src/shared/build/dimension.ts';
import { buildOf } from '../src/shared/build/look-up.ts';
import { createWorks } from '../src/shared/check/create-works.ts';
import type { VerdictState } from '../src/shared/machining/setup-check.ts';
import { SETUPS_PER_PART, shopBuild } from '../tests/support/shop-build.ts';
import { goalLine, ratioLine, timesOf, timesOfRuns } from './measure.ts';

// 500 set-ups of 100 castings on two lathes, a drill press and a shaper: every verdict with its band from the limits and its ways
// out, swept profiles and balance; the first time, and after one edit of a dimension. Processor times, without the kernel.

const PARTS = 100;
const RUNS = 3;
const EDITS = 300;
const WARM_UP = 60;
const COLD_WITHIN_MS = 3_000;
const EDIT_WITHIN_MS = 50;
/** Against working all of it out anew. */
const EDIT_GOAL = 50;

const say = (line: string): void => console.log(line);
const shop = shopBuild(PARTS);
const build = buildOf(shop.records);
const bare = buildOf(shop.records.filter(({ kind }) => kind !== 'setup'));

say(`${PARTS * SETUPS_PER_PART} set-ups of ${PARTS} parts:`);
const whole = timesOfRuns(RUNS, () => void createWorks(build)).median;
const without = timesOfRuns(RUNS, () => void createWorks(bare)).median;
say(goalLine('all of them, the first time', whole - without, COLD_WITHIN_MS));

const works = createWorks(build);
const states = new Map<VerdictState, number>();
for (const part of shop.parts) {
  for (const { check } of works.factsOf(part)?.setups ?? []) {
    if (check.unknown.length > 0) throw new Error('A set-up of the bench cannot be judged.');
    for (const { state } of check.verdicts) states.set(state, (states.get(state) ?? 0) + 1);
  }
}
say(`  ${[...states].map(([state, count]) => `${count} ${state}`).join(', ')}`);

const cpu = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const times: number[] = [];
for (let i = 0; i < EDITS; i++) {
  const { id, value } = shop.dimensions[(i * 7919) % shop.dimensions.length]!;
  const record = works.build.get(id) as Dimension;
  const next = { ...record, value: String(value + ((i % 5) - 2) / 4) };
  const start = cpu();
  works.update({ added: [], removed: [], updated: [[record, next]] });
  times.push(cpu() - start);
}
const { median } = timesOf(times.slice(WARM_UP));
say(goalLine('one edit of a dimension, findings and gates included', median, EDIT_WITHIN_MS));
say(ratioLine('one edit against all of it anew', median, whole, EDIT_GOAL));
