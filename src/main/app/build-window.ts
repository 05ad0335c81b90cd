import type { BrowserWindow } from 'electron';
import type { CommitError, OpenError, Request } from '../../shared/ipc/contract.ts';
import type { Store } from '../store/store.ts';

/** A build that a window shows. */
export interface OpenBuild {
  /** Absolute, with links resolved: two windows never show the same file. */
  readonly path: string;
  readonly store: Store;
  /** Which file the path meant when it was opened (`identityOf`); undefined when that cannot be told. */
  readonly identity: string | undefined;
}

export type WindowReport = Request<'window:state'>;

/** A window and what it shows. The one mutable thing of the shell; only `windows.ts` and the handlers write to it. */
export interface BuildWindow {
  readonly window: BrowserWindow;
  build: OpenBuild | undefined;
  /** A file that this window was to show and that is damaged: the window offers to recover it. */
  broken: OpenError | undefined;
  /** A file is being opened into this window: it is no longer free for another. */
  reserved: boolean;
  /** Settles when no file is being opened into this window; the page's first question is answered after it. */
  busy: Promise<void>;
  /** The page has been told what it shows, so a change must be told to it. */
  told: boolean;
  /** What the page last told of itself. */
  report: WindowReport;
  /** Edits handed to the store and not yet answered. */
  pending: number;
  /** Why the last edit is not on disk; undefined again as soon as one is, or it was taken back. */
  failed: CommitError | undefined;
  /** Something was put on disk since the build was opened. */
  edited: boolean;
  /** Everything is on disk, or the user gave it up: the window may go. */
  mayClose: boolean;
}

export const emptyReport: WindowReport = {
  undo: undefined,
  redo: undefined,
  saving: false,
  editingText: false,
  hasBuild: false,
  readOnly: false,
};

type SaveState = Pick<BuildWindow, 'report' | 'pending' | 'failed'>;

/** An edit is on its way to the disk. */
export const isSaving = (window: SaveState): boolean => window.pending > 0 || window.report.saving;

/** A title names the document first: that is what fits on a task bar. */
export function windowTitle(
  name: string | undefined,
  state: SaveState & Pick<BuildWindow, 'edited'> & { readonly readOnly: boolean },
): string {
  if (name === undefined) return 'Waywright';
  return `${name}${titleMark(state)} — Waywright`;
}

function titleMark(state: SaveState & Pick<BuildWindow, 'edited'> & { readonly readOnly: boolean }): string {
  if (state.readOnly) return ' (read-only)';
  if (state.failed !== undefined) return ' (not saved)';
  if (isSaving(state)) return ' (saving…)';
  return state.edited ? ' (saved)' : '';
}
