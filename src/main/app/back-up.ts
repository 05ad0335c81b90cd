import path from 'node:path';
import type { BuildWindow } from './build-window.ts';
import { askUser } from './dialogs.ts';

/** The store copies a build after its first loading. That there can be no copy is worth a word, not a refusal. */
export async function warnOfBackup(window: BuildWindow, folder: string): Promise<void> {
  const build = window.build;
  const copy = await build?.store.backedUp;
  // A file closed in the meantime needs no words about its copy.
  if (build === undefined || copy === undefined || copy.ok || window.build !== build) return;
  await askUser(window, 'warning', {
    message: `No backup copy of “${path.basename(build.path)}” could be made.`,
    detail: `${folder}: ${copy.error.detail}. The build is open and every edit is saved; keep a copy elsewhere with File ▸ Save a Copy….`,
  });
}
