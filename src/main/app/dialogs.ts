import { BrowserWindow, dialog, type FileFilter } from 'electron';
import { solidEndings } from '../../shared/solid/formats/solid-form.ts';
import type { Words } from '../files/open-words.ts';
import type { BuildWindow } from './build-window.ts';

export const filters = {
  build: { name: 'Builds', extensions: ['wayw'] },
  buildOrJson: { name: 'Builds', extensions: ['wayw', 'json'] },
  csv: { name: 'Tables (CSV)', extensions: ['csv', 'tsv', 'txt'] },
  json: { name: 'Builds in JSON form', extensions: ['json'] },
  solid: { name: 'Solids (STEP, STL, OBJ, 3MF)', extensions: solidEndings },
  stl: { name: 'Triangles (STL)', extensions: ['stl'] },
  '3mf': { name: 'Models (3MF)', extensions: ['3mf'] },
  all: { name: 'All Files', extensions: ['*'] },
} as const satisfies Record<string, FileFilter | { extensions: readonly string[] }>;

type Filter = (typeof filters)[keyof typeof filters];
const copied = (list: readonly Filter[]): FileFilter[] =>
  list.map(({ name, extensions }) => ({ name, extensions: [...extensions] }));

/** A window that is not shown yet cannot carry a dialog: on macOS it would hang on nothing. */
const parentOf = (over: BuildWindow | undefined): BrowserWindow | undefined =>
  over === undefined || over.window.isDestroyed() || !over.window.isVisible()
    ? (BrowserWindow.getFocusedWindow() ?? undefined)
    : over.window;

/**
 * Shows a message box over a window.
 * @param buttons the first is the default
 * @param cancel the button that Esc and the close box choose; by default the last
 * @returns which button was chosen, counted from 0
 */
export async function askUser(
  over: BuildWindow | undefined,
  type: 'info' | 'warning' | 'error' | 'question',
  words: Words,
  buttons: readonly [string, ...string[]] = ['OK'],
  cancel: number = buttons.length - 1,
): Promise<number> {
  const options = {
    type,
    ...words,
    buttons: [...buttons],
    defaultId: 0,
    cancelId: cancel,
    // On Windows, buttons named after common commands would otherwise become links.
    noLink: true,
    title: 'Waywright',
  };
  const parent = parentOf(over);
  const { response } = await (parent ? dialog.showMessageBox(parent, options) : dialog.showMessageBox(options));
  return response;
}

export interface FileQuestion {
  readonly title: string;
  /** A folder, or a folder with a suggested name. */
  readonly startAt: string;
  readonly filters: readonly Filter[];
}

/** @returns the chosen files; none when the user thinks better of it. */
export async function askOpen(
  over: BuildWindow | undefined,
  question: FileQuestion,
  several = false,
): Promise<string[]> {
  const options: Electron.OpenDialogOptions = {
    title: question.title,
    defaultPath: question.startAt,
    filters: copied(question.filters),
    properties: several ? ['openFile', 'multiSelections'] : ['openFile'],
  };
  const parent = parentOf(over);
  const answer = await (parent ? dialog.showOpenDialog(parent, options) : dialog.showOpenDialog(options));
  return answer.canceled ? [] : answer.filePaths;
}

/** @returns where to save; the system has asked before an existing file is named. Undefined: thought better of it. */
export async function askSave(over: BuildWindow | undefined, question: FileQuestion): Promise<string | undefined> {
  const options: Electron.SaveDialogOptions = {
    title: question.title,
    defaultPath: question.startAt,
    filters: copied(question.filters),
    properties: ['createDirectory', 'showOverwriteConfirmation'],
  };
  const parent = parentOf(over);
  const answer = await (parent ? dialog.showSaveDialog(parent, options) : dialog.showSaveDialog(options));
  return answer.canceled || answer.filePath === '' ? undefined : answer.filePath;
}
