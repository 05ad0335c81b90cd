import type { MenuAction, Preferences, RecentFile } from '../../shared/ipc/contract.ts';

/** What the shell knows of the window in front. */
export interface FrontWindow {
  /** Labels of the steps that undo and redo would take, as the journal words them: "set bore of column". */
  readonly undo: string | undefined;
  readonly redo: string | undefined;
  /** The keyboard is in a text field, where undo takes back typing. */
  readonly editingText: boolean;
  /** A build file is open behind it. */
  readonly hasFile: boolean;
  /** Its page shows the build and can carry out what is asked of it. */
  readonly hasBuild: boolean;
  readonly readOnly: boolean;
}

export interface MenuState {
  readonly platform: 'linux' | 'darwin' | 'win32';
  /** Adds the developer tools; never in a packaged program. */
  readonly developer: boolean;
  readonly front: FrontWindow | undefined;
  readonly recent: readonly RecentFile[];
  readonly homeFolder: string;
  readonly windows: readonly { readonly id: number; readonly title: string; readonly front: boolean }[];
  readonly theme: Preferences['theme'];
}

export type ExampleState = 'as-first-drawn' | 'as-corrected';

/** What menu items set going. */
export interface MenuCommands {
  newBuild(): void;
  open(): void;
  openRecent(path: string): void;
  clearRecent(): void;
  openExample(state: ExampleState): void;
  resetExample(): void;
  saveCopy(): void;
  showInFolder(): void;
  undo(): void;
  redo(): void;
  /** Hands an action to the window in front. */
  send(action: MenuAction): void;
  setTheme(theme: Preferences['theme']): void;
  showWindow(id: number): void;
  about(): void;
}
