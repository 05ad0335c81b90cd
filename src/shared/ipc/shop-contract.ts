import type { Machine } from '../build/machine.ts';
import type { Refusal } from '../build/refusals.ts';

/** Something of the file of the user's machines that could not be read. Under `path` it lies whole. */
export type ShopLoss =
  /** It is not there, but its last good copy is: under `path`, and its machines are those of the shop. */
  | { readonly is: 'gone'; readonly path: string }
  /** The whole file; the machines are those of its last good copy, or none where there is none. */
  | { readonly is: 'file'; readonly path: string; readonly detail: string; readonly hadCopy: boolean }
  /** One machine of it; the others are kept. */
  | { readonly is: 'machine'; readonly name: string; readonly path: string; readonly detail: string };

/** The user's own machines, shared by all builds. */
export interface ShopContent {
  /** In list order. */
  readonly machines: readonly Machine[];
  /** What was set aside since the program was started. */
  readonly lost: readonly ShopLoss[];
}

/** Why the shop could not be read, or a change of it not be kept. What is on disk is as it was. */
export type ShopError =
  | { readonly code: 'newer-version'; readonly path: string; readonly version: number; readonly newest: number }
  | { readonly code: 'unreadable'; readonly path: string; readonly detail: string }
  | { readonly code: 'disk-full'; readonly path: string }
  | { readonly code: 'unwritable'; readonly path: string; readonly detail: string }
  /** The machine itself cannot be kept; its words are those of commands (`refusalWords`). */
  | { readonly code: 'refused'; readonly refusal: Refusal };
