import { existsSync } from 'node:fs';
import { mkdir, rename } from 'node:fs/promises';
import path from 'node:path';
import { writeTrouble } from '../files/disk-trouble.ts';
import { freeName } from '../files/free-name.ts';
import { importJsonBuild } from '../files/import-json.ts';
import { commitWords } from '../files/open-words.ts';
import type { Places } from '../files/places.ts';
import { realFile } from '../files/real-file.ts';
import type { BuildWindow } from './build-window.ts';
import { askUser } from './dialogs.ts';
import { type ExampleState, exampleStates } from './launch.ts';
import type { Opening } from './opening.ts';
import { nameOf, type Windows } from './windows.ts';

interface Needs {
  readonly windows: Windows;
  readonly places: Places;
  readonly opening: Opening;
}

const titles: Readonly<Record<ExampleState, string>> = {
  'as-first-drawn': 'As First Drawn',
  'as-corrected': 'As Corrected',
};

/** Opens the user's own copy of an example, made on the first time. What is edited in it stays. */
export async function openExample(
  state: ExampleState,
  asking: BuildWindow | undefined,
  { places, opening }: Needs,
): Promise<void> {
  const copy = places.exampleCopy(state);
  if (!existsSync(copy) && !(await makeCopy(state, asking, places))) return;
  await opening.open(copy, asking, { unlisted: true });
}

async function makeCopy(state: ExampleState, asking: BuildWindow | undefined, places: Places): Promise<boolean> {
  const copy = places.exampleCopy(state);
  try {
    await mkdir(path.dirname(copy), { recursive: true });
  } catch (error) {
    await askUser(asking, 'error', commitWords(writeTrouble(error), copy));
    return false;
  }
  const made = await importJsonBuild(places.exampleSource(state), copy);
  if (!made.ok) await askUser(asking, 'error', made.error);
  return made.ok;
}

/** Puts an example back as it came. The edited copy is kept beside it under another name. */
export async function resetExample(asking: BuildWindow | undefined, needs: Needs): Promise<void> {
  const words = {
    message: 'Which example is to be put back as it came?',
    detail: 'The copy that you have worked on is kept beside it under another name.',
  };
  const buttons = [titles['as-first-drawn'], titles['as-corrected'], 'Cancel'] as const;
  const state = exampleStates[await askUser(asking, 'question', words, [...buttons])];
  if (state === undefined) return;
  const copy = needs.places.exampleCopy(state);
  const window = needs.windows.showing(await realFile(copy));
  if (window?.build !== undefined) {
    const { store } = window.build;
    needs.windows.assign(window, undefined);
    await store.close();
  }
  if (existsSync(copy)) {
    const kept = freeName(path.dirname(copy), `${nameOf(copy)} kept`, '.wayw');
    // The log files of SQLite go with their file: one left behind would be played into the new file.
    for (const ending of ['', '-wal', '-shm']) {
      if (existsSync(copy + ending)) await rename(copy + ending, kept + ending);
    }
  }
  await openExample(state, window ?? asking, needs);
}
