/** Something of a list of the user's that could not be read. Under `path` it lies whole. */
export type KeptLoss =
  /** The file is not there, but its last good copy is: under `path`, and its items are those of the list. */
  | { readonly is: 'gone'; readonly path: string }
  /** The whole file; the items are those of its last good copy, or none where there is none. */
  | { readonly is: 'file'; readonly path: string; readonly detail: string; readonly hadCopy: boolean }
  /** One item of it; the others are kept. */
  | { readonly is: 'item'; readonly name: string; readonly path: string; readonly detail: string };

/** Why a list of the user's could not be read, or a change of it not be kept. What is on disk is as it was. */
export type KeptError =
  | { readonly code: 'newer-version'; readonly path: string; readonly version: number; readonly newest: number }
  | { readonly code: 'unreadable'; readonly path: string; readonly detail: string }
  | { readonly code: 'disk-full'; readonly path: string }
  | { readonly code: 'unwritable'; readonly path: string; readonly detail: string };
