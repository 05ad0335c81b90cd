import path from 'node:path';
import { defaultSettings } from '../../shared/build/settings.ts';
import { freeName } from '../files/free-name.ts';
import { commitWords } from '../files/open-words.ts';
import type { Places } from '../files/places.ts';
import { realFile } from '../files/real-file.ts';
import type { Shop } from '../shop/open-shop.ts';
import { createStore } from '../store/create-store.ts';
import type { BuildWindow } from './build-window.ts';
import { askSave, askUser, filters } from './dialogs.ts';
import type { Opening } from './opening.ts';
import { nameOf, type Windows } from './windows.ts';

interface Needs {
  readonly windows: Windows;
  readonly places: Places;
  readonly opening: Opening;
}

interface NewNeeds extends Needs {
  readonly shop: Pick<Shop, 'load'>;
}

/**
 * Asks where a build file is to be; the user has agreed to replace what may be there. The ending is added when it was not typed, and then a file of the full name is
 * asked about here, because the system asked only about the name as typed.
 */
async function askPlace(
  over: BuildWindow | undefined,
  title: string,
  startAt: string,
  { windows, places }: Needs,
): Promise<string | undefined> {
  const chosen = await askSave(over, { title, startAt, filters: [filters.build] });
  if (chosen === undefined) return undefined;
  const complete = path.extname(chosen).toLowerCase() === '.wayw';
  const file = path.resolve(complete ? chosen : `${chosen}.wayw`);
  places.lastFolder.set(path.dirname(file));
  const name = path.basename(file);
  if (windows.showing(await realFile(file)) !== undefined) {
    const detail = 'A file cannot be replaced while it is open. Choose another name, or close its window first.';
    await askUser(over, 'warning', { message: `“${name}” is open in a window.`, detail });
    return undefined;
  }
  if (!complete && freeName(path.dirname(file), nameOf(file), '.wayw') !== file) {
    const detail = `There is a file of this name in ${path.dirname(file)}. Replacing it loses what it holds.`;
    const words = { message: `Replace “${name}”?`, detail };
    if ((await askUser(over, 'question', words, ['Keep It', 'Replace'], 0)) === 0) return undefined;
  }
  return file;
}

/**
 * Makes a new build: it is a file from its first moment. It begins with the machines of the user's shop; where that cannot
 * be read, the Machine Shop says so and takes them later.
 */
export async function newBuild(asking: BuildWindow | undefined, needs: NewNeeds): Promise<void> {
  const start = freeName(needs.places.lastFolder.get(), 'New machine', '.wayw');
  const file = await askPlace(asking, 'New Build', start, needs);
  if (file === undefined) return;
  const own = await needs.shop.load();
  const machines = own.ok ? own.value.machines : [];
  const made = await createStore(file, [defaultSettings(nameOf(file)), ...machines], { replace: true });
  if (!made.ok) {
    await askUser(asking, 'error', commitWords(made.error, file));
    return;
  }
  await needs.opening.open(file, asking);
}

/** Writes a copy of the build elsewhere; the window stays with the original. */
export async function saveCopy(window: BuildWindow | undefined, needs: Needs): Promise<void> {
  const build = window?.build;
  if (window === undefined || build === undefined) return;
  const start = freeName(needs.places.lastFolder.get(), `${nameOf(build.path)} copy`, '.wayw');
  const file = await askPlace(window, 'Save a Copy', start, needs);
  if (file === undefined) return;
  const made = await build.store.copyTo(file, { replace: true });
  if (!made.ok) {
    await askUser(window, 'error', commitWords(made.error, file));
    return;
  }
  const name = path.basename(file);
  const words = { message: `A copy was saved as “${name}”.`, detail: `It lies in ${path.dirname(file)}.` };
  if ((await askUser(window, 'info', words, ['OK', 'Open the Copy'], 0)) === 1) await needs.opening.open(file);
}
