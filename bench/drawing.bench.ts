import type { BuildDiff } from '../src/shared/build/diff.ts';
import type { Dimension } from '../src/shared/build/dimension.ts';
import { createDrawing } from '../src/shared/drawing/create-drawing.ts';
import { hyperformulaPeer, mathjsPeer, type Peer } from './drawing-peers.ts';
import { inWords, ratioLine, type Times, timesOf, timesOfRuns } from './measure.ts';
import { type Synthetic, syntheticBuild } from './synthetic-build.ts';

// The drawing graph against general-purpose libraries on the same build: reading every text, ordering, evaluating and
// placing, then single edits. Ours also checks units, works out limits with the table row behind each, bands, loops and
// contradictions; the peers do not.

// Edits made, alike for all; only those after the warm-up are timed.
const EDITS = 12_000;
const WARM_UP = 6_000;
const say = (line: string): void => console.log(line);

/** Everything anyone could ask: each dimension with its limits and their origin, each axis with its loops. */
function askAll({ build }: Synthetic): void {
  const drawing = createDrawing(build);
  for (const record of build.values()) {
    if (record.kind === 'dimension') drawing.dimension(record.id);
    else if (record.kind === 'part') drawing.axesOf(record.id);
  }
}

function agree(synthetic: Synthetic, peer: Peer): void {
  const drawing = createDrawing(synthetic.build);
  const values = peer.cold(synthetic.dimensions);
  synthetic.dimensions.forEach(({ record }, i) => {
    const ours = drawing.dimension(record.id).value;
    if (ours === undefined || !(Math.abs(ours - values[i]!) < 1e-6)) {
      throw new Error(`${peer.name} gives ${values[i]} for ${record.id}, the drawing ${ours}.`);
    }
  });
}

/**
 * Indices of plain figures and new values for them, the same for all: each is moved by up to 0.2 mm, as a drawing is
 * mended, so that the loops stay closed within their limits.
 */
function editsOf({ dimensions }: Synthetic): readonly (readonly [index: number, value: number])[] {
  const plain = dimensions.flatMap(({ number }, i) => (number === undefined ? [] : [i]));
  return Array.from({ length: EDITS }, (_, i) => {
    const index = plain[(i * 7919) % plain.length]!;
    return [index, Math.round(dimensions[index]!.number! * 1000 + ((i % 4) - 2) * 100 + 50) / 1000] as const;
  });
}

function ourEdits(synthetic: Synthetic, isWatched: boolean): Times {
  const drawing = createDrawing(synthetic.build);
  if (isWatched) {
    for (const record of synthetic.build.values()) {
      if (record.kind === 'dimension') drawing.dimension(record.id);
      else if (record.kind === 'part') drawing.axesOf(record.id);
    }
  }
  const now: Dimension[] = synthetic.dimensions.map(({ record }) => record);
  const samples: number[] = [];
  const { gc } = globalThis as { gc?: () => void };
  for (const [index, value] of editsOf(synthetic)) {
    if (samples.length === WARM_UP) gc?.();
    const from = now[index]!;
    const to: Dimension = { ...from, value: String(value) };
    now[index] = to;
    const diff: BuildDiff = { added: [], removed: [], updated: [[from, to]] };
    const start = performance.now();
    const change = drawing.update(diff);
    if (isWatched) for (const { part } of change.axes) drawing.axesOf(part);
    samples.push(performance.now() - start);
  }
  return timesOf(samples.slice(WARM_UP));
}

function peerEdits(synthetic: Synthetic, peer: Peer): Times {
  const edit = peer.edits(synthetic.dimensions);
  const samples: number[] = [];
  const { gc } = globalThis as { gc?: () => void };
  for (const [index, value] of editsOf(synthetic)) {
    if (samples.length === WARM_UP) gc?.();
    const start = performance.now();
    edit(index, value);
    samples.push(performance.now() - start);
  }
  return timesOf(samples.slice(WARM_UP));
}

const goals: Readonly<Record<string, { readonly cold: number; readonly edit: number | undefined }>> = {
  mathjs: { cold: 10, edit: undefined },
  hyperformula: { cold: 50, edit: 20 },
};

const hyperformula = await hyperformulaPeer();
if (!hyperformula) say('hyperformula skipped: not installed (npm run bench -- drawing --with-peers installs it).');
const peers: readonly Peer[] = [mathjsPeer(), ...(hyperformula ? [hyperformula] : [])];

for (const count of [10_000, 100_000]) {
  const synthetic = syntheticBuild(count);
  const runs = count > 50_000 ? 7 : 21;
  for (const peer of peers) agree(synthetic, peer);
  const ours = timesOfRuns(runs, () => void createDrawing(synthetic.build));
  const asked = timesOfRuns(runs, () => askAll(synthetic));
  say(`${count} dimensions, cold: ${inWords(ours.median)}; with every answer made: ${inWords(asked.median)}`);
  for (const peer of peers) {
    const theirs = timesOfRuns(3, () => void peer.cold(synthetic.dimensions));
    say(ratioLine(`cold, ${count}, against ${peer.name}`, ours.median, theirs.median, goals[peer.name]!.cold));
  }
}

const large = syntheticBuild(100_000);
const edit = ourEdits(large, false);
const watched = ourEdits(large, true);
say(`one edit among 100000: ${inWords(edit.median)}, p99 ${inWords(edit.p99)}`);
say(`the same with its answers made again: ${inWords(watched.median)}, p99 ${inWords(watched.p99)}`);
say(`${edit.p99 < 0.1 ? 'reached' : 'MISSED '}  one edit, p99 under 0.1 ms: ${inWords(edit.p99)}`);
for (const peer of peers) {
  const theirs = peerEdits(large, peer);
  const goal = goals[peer.name]!.edit;
  if (goal === undefined) say(`${peer.name}, one edit: ${inWords(theirs.median)} (no goal)`);
  else say(ratioLine(`one edit among 100000 against ${peer.name}`, edit.median, theirs.median, goal));
}
