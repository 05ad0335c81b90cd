import type { OpenRequest } from './launch.ts';

/** The part of the program that knows builds, menus and dialogs, as the start-up sees it. */
export interface Shell {
  /** Once, when Electron is ready and before any window: handlers of messages, menus. */
  begin(): Promise<void>;
  /**
   * Opens what is asked for, each build in its own window; with nothing asked for, a window without a build (or the
   * one that is already there comes forward). Failures are the shell's to tell.
   */
  open(request: OpenRequest): Promise<void>;
  /** Before the program ends: resolves when everything is on disk and every file is closed. */
  end(): Promise<void>;
}
