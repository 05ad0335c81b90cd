import type { PartId } from '../base/ids.ts';
import type { Unknown } from '../plan/unknown.ts';
import type { AlloyKey } from '../tables/alloys.ts';

/** What the foundry must know, and does not. Nothing is guessed in its place. */
export type FoundryUnknown =
  | Unknown
  /** No such alloy in the table or in the build; an empty name: none is said. */
  | { readonly is: 'alloy'; readonly name: string }
  | { readonly is: 'alloy figure'; readonly alloy: string; readonly key: AlloyKey }
  /** The part has no solid, or it is not worked out yet. */
  | { readonly is: 'solid'; readonly part: PartId }
  /** Its sections are not worked out yet. */
  | { readonly is: 'sections'; readonly part: PartId };

/** Each thing once, in the order in which it was missed first. */
export const distinctMissing = (unknown: readonly FoundryUnknown[]): readonly FoundryUnknown[] => [
  ...new Map(unknown.map((one) => [JSON.stringify(one), one])).values(),
];
