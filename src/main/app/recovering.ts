import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { ok, type Result } from '../../shared/base/result.ts';
import type { CommitError, OpenError } from '../../shared/ipc/contract.ts';
import { freeName } from '../files/free-name.ts';
import { commitWords, openWords, type Words } from '../files/open-words.ts';
import type { Places } from '../files/places.ts';
import { type Loss, recover } from '../store/recover.ts';
import type { BuildWindow } from './build-window.ts';
import { askUser } from './dialogs.ts';
import { isFree, nameOf, tell, type Windows } from './windows.ts';

type Damaged = Extract<OpenError, { readonly code: 'damaged' }>;

export interface Recovered {
  readonly path: string;
  readonly lost: readonly Loss[];
}

/**
 * Reads what is whole of a damaged build into a new file beside it (or, where nothing can be written, into the
 * program's own folder). The damaged file is not touched.
 */
export async function recoverBeside(file: string, places: Places): Promise<Result<Recovered, OpenError | CommitError>> {
  const name = `${nameOf(file)} recovered`;
  const beside = freeName(path.dirname(file), name, '.wayw');
  const first = await recover(file, beside);
  if (first.ok) return ok({ path: beside, lost: first.value.lost });
  if (first.error.code !== 'unwritable') return first;
  await mkdir(places.opened, { recursive: true });
  const elsewhere = freeName(places.opened, name, '.wayw');
  const second = await recover(file, elsewhere);
  return second.ok ? ok({ path: elsewhere, lost: second.value.lost }) : second;
}

const isCommitError = (error: OpenError | CommitError): error is CommitError =>
  error.code === 'disk-full' ||
  error.code === 'unwritable' ||
  error.code === 'read-only' ||
  error.code === 'stale-revision' ||
  error.code === 'nothing-to-step';

const MOST_LOSSES = 8;

function lossInWords(file: string, { path: made, lost }: Recovered): Words {
  const message = `“${path.basename(file)}” was recovered as “${path.basename(made)}”.`;
  const where = `It lies in ${path.dirname(made)}. The damaged file is as it was; keep it until you have looked through the new one.`;
  if (lost.length === 0) return { message, detail: `Everything could be read. ${where}` };
  const shown = lost.slice(0, MOST_LOSSES).map(lossLine);
  const rest = lost.length - shown.length;
  return {
    message,
    detail: ['This could not be read:', ...shown, ...(rest > 0 ? [`and ${rest} more.`] : []), where].join('\n'),
  };
}

const lossLine = (loss: Loss): string => `• ${loss.what}`;

export interface Recovery {
  readonly windows: Windows;
  readonly places: Places;
  readonly openFile: (file: string) => Promise<void>;
}

/** Offers to recover a damaged build. When the user declines, a free window keeps the offer open. */
export async function offerRecovery(over: BuildWindow | undefined, error: Damaged, needs: Recovery): Promise<void> {
  const choice = await askUser(over, 'warning', openWords(error), ['Recover into a New File', 'Not Now']);
  if (choice !== 0) {
    if (over === undefined || !isFree(over)) return;
    over.broken = error;
    needs.windows.refresh(over);
    if (over.told) tell(over, 'build:replaced', undefined);
    return;
  }
  const recovered = await recoverBeside(error.path, needs.places);
  if (!recovered.ok) {
    const why = recovered.error;
    await askUser(over, 'error', isCommitError(why) ? commitWords(why, error.path) : openWords(why));
    return;
  }
  await needs.openFile(recovered.value.path);
  const shown = needs.windows.showing(recovered.value.path);
  await askUser(shown ?? over, 'info', lossInWords(error.path, recovered.value));
}
