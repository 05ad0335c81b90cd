import type { Machine } from '../build/machine.ts';
import type { Refusal } from '../build/refusals.ts';
import type { KeptError, KeptLoss } from './kept-contract.ts';

/** Something of the file of the user's machines that could not be read. Under `path` it lies whole. */
export type ShopLoss =
  | Exclude<KeptLoss, { readonly is: 'item' }>
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
  | KeptError
  /** The machine itself cannot be kept; its words are those of commands (`refusalWords`). */
  | { readonly code: 'refused'; readonly refusal: Refusal };
