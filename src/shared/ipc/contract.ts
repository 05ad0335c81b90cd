import type { MachineId } from '../base/ids.ts';
import type { Result } from '../base/result.ts';
import type { BuildDiff } from '../build/diff.ts';
import type { Machine } from '../build/machine.ts';
import type { MeshUnit } from '../build/solid.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import type { SolidProblem } from '../solid/formats/mesh-file.ts';
import type { SolidForm } from '../solid/formats/solid-form.ts';
import type { Vec3 } from '../solid/placed.ts';
import type { ShopContent, ShopError } from './shop-contract.ts';

/** Where undo and redo stand: the labels of the next steps, undefined when there is none. */
export interface HistoryLabels {
  readonly undo: string | undefined;
  readonly redo: string | undefined;
}

export interface Saved extends HistoryLabels {
  readonly revision: number;
}

/** A build as the window receives it. */
export interface OpenedBuild extends Saved {
  /** File name without folder and ending, for the title. */
  readonly fileName: string;
  /** Folder, shown in tips. */
  readonly folder: string;
  /** All records as one JSON array: one string crosses far faster than many objects. */
  readonly records: string;
  /** Set when it cannot be edited, with the reason. */
  readonly readOnly: ReadOnlyReason | undefined;
}

/** A build as the page is told of it. */
export interface LoadedBuild extends OpenedBuild {
  /** What the engine worked out of these very records another time (`KeptModels` as JSON); undefined when nothing is kept. */
  readonly keptViews: string | undefined;
}

export type ReadOnlyReason =
  | { readonly why: 'held'; readonly by: string; readonly since: string }
  | { readonly why: 'file' };

/** Why a file could not be opened. */
export type OpenError =
  | { readonly code: 'not-found'; readonly path: string }
  | { readonly code: 'not-a-build'; readonly path: string }
  | { readonly code: 'newer-version'; readonly path: string; readonly version: number; readonly newest: number }
  | { readonly code: 'damaged'; readonly path: string; readonly detail: string }
  | { readonly code: 'unreadable'; readonly path: string; readonly detail: string };

/** Why an edit could not be put on disk. The document on disk is as it was. */
export type CommitError =
  | { readonly code: 'stale-revision'; readonly current: number }
  | { readonly code: 'read-only' }
  | { readonly code: 'disk-full' }
  | { readonly code: 'nothing-to-step' }
  | { readonly code: 'unwritable'; readonly detail: string };

/** A named state of the drawings, kept in the build file. */
export interface DrawingIssue {
  readonly letter: string;
  readonly title: string;
  readonly note: string;
  readonly issuedAt: string;
  readonly revision: number;
}

export interface RecentFile {
  readonly path: string;
  readonly missing: boolean;
}

export interface Preferences {
  readonly theme: 'system' | 'light' | 'dark';
}

/** A closed solid out of a file, its numbers as the file has them. */
export interface PickedSolid {
  /** Name of the file, with its ending. */
  readonly fileName: string;
  readonly form: SolidForm;
  /** The unit that the file names; undefined where the reader must be asked. */
  readonly unit: MeshUnit | undefined;
  /** Typed arrays cross as one block of memory each. */
  readonly vertices: Float64Array;
  readonly triangles: Uint32Array;
  readonly volume: number;
  readonly min: Vec3;
  readonly max: Vec3;
  /** What was mended or passed over, in sentences. */
  readonly remarks: readonly string[];
}

/** The whole surface between the window and the main process. Types only plus names: no zod, no Electron. */
export interface IpcContract {
  /**
   * The build of this window; undefined when the window has none yet. The first time it is handed over as it was read:
   * nothing may be edited before `build:verify` has said that its rows are sound. Asked again, it is verified first.
   */
  'build:load': { request: undefined; response: Result<LoadedBuild | undefined, OpenError> };
  /** Whether every row of the build that was loaded is what a build holds; a build that is not is let go of. */
  'build:verify': { request: undefined; response: Result<undefined, OpenError> };
  'build:commit': {
    request: { revision: number; label: string; diff: BuildDiff };
    response: Result<Saved, CommitError>;
  };
  /** Undo and redo are steps through the journal on disk, so they survive closing and crashing. */
  'build:step': {
    request: { revision: number; direction: 'undo' | 'redo' };
    response: Result<Saved & { diff: BuildDiff; label: string }, CommitError>;
  };
  /** The records as they stand on disk, when no views of them are kept yet; undefined when there is nothing to keep. */
  'views:wanted': { request: undefined; response: { readonly records: string } | undefined };
  /** Keeps the views of the records that `views:wanted` handed over last. */
  'views:keep': { request: { views: string }; response: undefined };
  'issue:list': { request: undefined; response: readonly DrawingIssue[] };
  'issue:make': {
    request: { letter: string; title: string; note: string };
    response: Result<DrawingIssue, CommitError | { readonly code: 'letter-taken' }>;
  };
  /** Recovers what can be read of the damaged file of this window into a new file beside it, and opens that. */
  'files:recover': { request: undefined; response: Result<{ path: string; lost: number }, OpenError | CommitError> };
  'files:new': { request: undefined; response: undefined };
  /** With a path it must be one of the recent files; without, the system's dialog asks. */
  'files:open': { request: { recent: string | undefined }; response: undefined };
  /** Files let fall on the window: builds (`.wayw`) and JSON builds are opened, the rest is refused in words. */
  'files:open-dropped': { request: { paths: readonly string[] }; response: undefined };
  'files:open-example': { request: { state: 'as-first-drawn' | 'as-corrected' }; response: undefined };
  'files:recent': { request: undefined; response: readonly RecentFile[] };
  /** Asks for a file and hands over its text; undefined when the user thinks better of it. */
  'files:pick-text': {
    request: { kind: 'csv' | 'json' };
    response: Result<
      { name: string; text: string } | undefined,
      { readonly code: 'too-large' | 'unreadable'; readonly detail: string }
    >;
  };
  /** Asks where, writes the text there; undefined when the user thinks better of it. */
  'files:save-text': {
    request: { kind: 'csv' | 'json'; suggestedName: string; text: string };
    response: Result<{ path: string } | undefined, CommitError>;
  };
  /** Asks for a file of a solid, reads and mends it; undefined when the user thinks better of it. */
  'files:pick-solid': {
    request: undefined;
    response: Result<PickedSolid | undefined, SolidProblem & { readonly fileName: string }>;
  };
  /** Asks where, writes the solid of a part there; undefined when the user thinks better of it. */
  'files:save-solid': {
    request: { kind: 'stl' | '3mf'; suggestedName: string; bytes: Uint8Array };
    response: Result<{ path: string } | undefined, CommitError>;
  };
  /** The user's own machines, shared by all builds. */
  'shop:load': { request: undefined; response: Result<ShopContent, ShopError> };
  /** Keeps a machine, in the place of the one of its id; `lengthUnit` is that of lengths written without one. */
  'shop:put': {
    request: { machine: Machine; lengthUnit: LengthUnit };
    response: Result<ShopContent, ShopError>;
  };
  'shop:remove': { request: { machine: MachineId }; response: Result<ShopContent, ShopError> };
  'preferences:get': { request: undefined; response: Preferences };
  'preferences:set': { request: Preferences; response: undefined };
  /** What the window tells the shell, so that menus and title are true. */
  'window:state': {
    request: {
      undo: string | undefined;
      redo: string | undefined;
      saving: boolean;
      editingText: boolean;
      hasBuild: boolean;
      readOnly: boolean;
    };
    response: undefined;
  };
}

export type Channel = keyof IpcContract;
export type Request<C extends Channel> = IpcContract[C]['request'];
export type Response<C extends Channel> = IpcContract[C]['response'];

// `satisfies` makes forgetting or misspelling a channel a compile error.
export const channels = Object.keys({
  'build:load': 0,
  'build:verify': 0,
  'build:commit': 0,
  'build:step': 0,
  'views:wanted': 0,
  'views:keep': 0,
  'issue:list': 0,
  'issue:make': 0,
  'files:recover': 0,
  'files:new': 0,
  'files:open': 0,
  'files:open-dropped': 0,
  'files:open-example': 0,
  'files:recent': 0,
  'files:pick-text': 0,
  'files:save-text': 0,
  'files:pick-solid': 0,
  'files:save-solid': 0,
  'shop:load': 0,
  'shop:put': 0,
  'shop:remove': 0,
  'preferences:get': 0,
  'preferences:set': 0,
  'window:state': 0,
} satisfies Record<Channel, 0>) as Channel[];

/** What the shell tells the window. */
export interface IpcEvents {
  /** A menu item was chosen that the window carries out. */
  menu: { action: MenuAction };
  /** The window now shows another build (opened, recovered, created). */
  'build:replaced': undefined;
  'preferences:changed': Preferences;
  /** In whichever window it was changed; every window is told. */
  'shop:changed': ShopContent;
}

export const menuActions = [
  'undo',
  'redo',
  'find',
  'part-new',
  'station-new',
  'dimension-new',
  'issue-make',
  'import-csv',
  'import-json',
  'import-solid',
  'export-csv',
  'export-json',
  'export-stl',
  'export-3mf',
  'show-works',
  'show-drawing',
  'show-machining',
  'materials',
  'settings',
  'keys',
  'next-pane',
] as const;
export type MenuAction = (typeof menuActions)[number];

export type EventName = keyof IpcEvents;
export const events = Object.keys({
  menu: 0,
  'build:replaced': 0,
  'preferences:changed': 0,
  'shop:changed': 0,
} satisfies Record<EventName, 0>) as EventName[];

/** What preload puts on `window.waywright`. */
export interface WaywrightApi {
  invoke<C extends Channel>(channel: C, request: Request<C>): Promise<Response<C>>;
  /** @returns a function that stops listening. */
  on<E extends EventName>(event: E, listener: (payload: IpcEvents[E]) => void): () => void;
  readonly platform: 'linux' | 'darwin' | 'win32';
}
