import path from 'node:path';
import { app } from 'electron';
import { BugError } from '../../shared/base/assert.ts';
import type { EventName, IpcEvents } from '../../shared/ipc/contract.ts';
import { type BuildWindow, emptyReport, isSaving, type OpenBuild, windowTitle } from './build-window.ts';
import { createWindow } from './window.ts';

/** All windows of the program, one per build. */
export interface Windows {
  all(): readonly BuildWindow[];
  /** The focused one, else the one that was focused last. */
  front(): BuildWindow | undefined;
  /** @throws BugError when the sender is none of our windows: the door lets no other in. */
  ofSender(contentsId: number): BuildWindow;
  showing(path: string): BuildWindow | undefined;
  /** A window without a build that waits for one. */
  empty(): BuildWindow | undefined;
  /** @param hidden it stays so until {@link show}: it may not be wanted after all. */
  add(hidden?: boolean): BuildWindow;
  /** Takes away a window that was made hidden and is not wanted. */
  drop(window: BuildWindow): void;
  show(window: BuildWindow): void;
  /** Gives a window its build and tells its page; closing the store that it had is the caller's. */
  assign(window: BuildWindow, build: OpenBuild | undefined): void;
  /** To be called whenever something changed that title or menus tell. */
  refresh(window: BuildWindow): void;
}

export const nameOf = (file: string): string => path.basename(file, path.extname(file));

/** No build is shown, none is on its way, and nothing waits to be recovered. */
export const isFree = ({ build, broken, reserved, window }: BuildWindow): boolean =>
  build === undefined && broken === undefined && !reserved && !window.isDestroyed();

/** Most edits are on disk sooner; a title that flickers at every key would tire the eye. */
const TELL_SAVING_AFTER_MS = 300;

export function tell<E extends EventName>(to: BuildWindow, event: E, payload: IpcEvents[E]): void {
  if (!to.window.isDestroyed()) to.window.webContents.send(event, payload);
}

/** @param onChange called when the menus may have to change */
export function keepWindows(onChange: () => void, onNew: (window: BuildWindow) => void): Windows {
  /** The window in front is last. */
  const windows: BuildWindow[] = [];

  const add = (window: BuildWindow, hidden: boolean): void => {
    // What is hidden is not in front of anything.
    if (hidden) windows.unshift(window);
    else windows.push(window);
  };
  const bringForward = (window: BuildWindow): void => {
    const at = windows.indexOf(window);
    if (at < 0) return;
    windows.splice(at, 1);
    windows.push(window);
    onChange();
  };

  const refresh = (window: BuildWindow): void => {
    if (window.window.isDestroyed()) return;
    const file = window.build?.path;
    const readOnly = window.build?.store.readOnly !== undefined;
    window.window.setTitle(windowTitle(file === undefined ? undefined : nameOf(file), { ...window, readOnly }));
    if (process.platform === 'darwin') {
      window.window.setRepresentedFilename(file ?? '');
      window.window.setDocumentEdited(isSaving(window) || window.failed !== undefined);
    }
    onChange();
  };

  return {
    all: () => windows,
    front: () => windows.find((each) => each.window.isFocused()) ?? windows.at(-1),
    ofSender(contentsId) {
      const found = windows.find((each) => each.window.webContents.id === contentsId);
      if (found === undefined) throw new BugError('A message came from a window that is not kept.');
      return found;
    },
    showing: (file) => windows.find((each) => each.build?.path === file),
    empty: () => windows.findLast((each) => isFree(each)),
    add(hidden = false) {
      const window: BuildWindow = {
        window: createWindow(hidden),
        build: undefined,
        broken: undefined,
        reserved: false,
        busy: Promise.resolve(),
        told: false,
        report: emptyReport,
        pending: 0,
        failed: undefined,
        edited: false,
        mayClose: false,
      };
      add(window, hidden);
      window.window.on('focus', () => bringForward(window));
      window.window.once('closed', () => {
        windows.splice(windows.indexOf(window), 1);
        onChange();
      });
      onNew(window);
      refresh(window);
      return window;
    },
    drop(window) {
      window.mayClose = true;
      if (!window.window.isDestroyed()) window.window.destroy();
    },
    show(shown) {
      const { window } = shown;
      if (window.isMinimized()) window.restore();
      window.show();
      window.focus();
      bringForward(shown);
      if (process.platform === 'darwin') app.focus({ steal: true });
    },
    assign(window, build) {
      window.build = build;
      window.broken = undefined;
      window.failed = undefined;
      window.edited = false;
      window.report = { ...emptyReport, hasBuild: build !== undefined, readOnly: build?.store.readOnly !== undefined };
      refresh(window);
      if (window.told) tell(window, 'build:replaced', undefined);
    },
    refresh: (() => {
      const waiting = new WeakMap<BuildWindow, NodeJS.Timeout>();
      return (window: BuildWindow) => {
        clearTimeout(waiting.get(window));
        if (!isSaving(window) || window.failed !== undefined) return refresh(window);
        onChange();
        waiting.set(
          window,
          setTimeout(() => refresh(window), TELL_SAVING_AFTER_MS),
        );
      };
    })(),
  };
}
