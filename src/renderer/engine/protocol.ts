import type { PartId } from '../../shared/base/ids.ts';
import type { BuildDiff } from '../../shared/build/diff.ts';
import type { Patch } from './patch.ts';

/** From the window to the engine's worker. `call` numbers pair a message with its answer. */
export type ToWorker =
  /** A build as JSON; answered when it is worked out and every watched view has been sent. */
  | { readonly type: 'load'; readonly call: number; readonly records: string }
  /** Answered with the first views of the build as text (`writeFirstViews`), right after it was loaded. */
  | { readonly type: 'first-views'; readonly call: number }
  | { readonly type: 'close' }
  | { readonly type: 'watch'; readonly key: string; readonly name: string; readonly params: unknown }
  | { readonly type: 'unwatch'; readonly key: string }
  | { readonly type: 'run'; readonly call: number; readonly command: string; readonly params: unknown }
  /** Steps taken by the journal (undo, redo) or back to before a refused save. */
  | { readonly type: 'apply'; readonly call: number; readonly diffs: readonly BuildDiff[] }
  | { readonly type: 'ask'; readonly call: number; readonly name: string; readonly params: unknown };

/** From the worker to the window. Views that an edit changes are sent before the answer to that edit. */
export type FromWorker =
  | { readonly type: 'views'; readonly changes: readonly ViewChange[] }
  /** A build was read and is now worked out; the part that comes first may be shown before anything is known of it. */
  | { readonly type: 'read'; readonly first: PartId | undefined }
  | { readonly type: 'answer'; readonly call: number; readonly value: unknown }
  | { readonly type: 'broken'; readonly call: number | undefined; readonly message: string };

export interface ViewChange {
  readonly key: string;
  readonly patch: Patch;
}

/** The answer to `run`. */
export type RunAnswer =
  | { readonly ok: true; readonly label: string; readonly diff: BuildDiff }
  | { readonly ok: false; readonly code: string; readonly sentence: string };
