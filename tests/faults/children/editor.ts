/**
 * Edits a build without end, to be killed: `editor FILE FIRST-NUMBER SEED`. Before each step it prints what it will do,
 * and after the store has acknowledged it, that it is done.
 */
import { writeSync } from 'node:fs';
import { openStore } from '../../../src/main/store/open-store.ts';
import { partNumbered, randomOf, type Stroke } from '../strokes.ts';

const [file = '', first = '0', seed = '1'] = process.argv.slice(2);
// Straight to the pipe: a line that is printed is on its way before anything else happens.
const tell = (line: object) => writeSync(1, `${JSON.stringify(line)}\n`);

const opened = await openStore(file);
if (!opened.ok) throw new Error(JSON.stringify(opened.error));
if (opened.value.readOnly) throw new Error(`opened for reading: ${JSON.stringify(opened.value.readOnly)}`);
const store = opened.value;
const loaded = await store.load();
if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
let { revision, undo, redo } = loaded.value;
const random = randomOf(Number(seed));

for (let n = Number(first); ; n++) {
  const dice = random();
  const stroke: Stroke =
    dice < 0.2 && undo !== undefined
      ? { do: 'undo' }
      : dice < 0.3 && redo !== undefined
        ? { do: 'redo' }
        : { do: 'add', n };
  tell({ will: stroke });
  const result =
    stroke.do === 'add'
      ? await store.commit(revision, `add ${n}`, { added: [partNumbered(n)], updated: [], removed: [] })
      : await store.step(stroke.do, revision);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  ({ revision, undo, redo } = result.value);
  tell({ did: stroke, revision });
}
