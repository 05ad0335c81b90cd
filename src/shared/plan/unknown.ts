import type { BodyId, DimensionId, MachineId, StationId } from '../base/ids.ts';

/** What must be known before something can be said. Nothing is guessed in its place. */
export type Unknown =
  | { readonly is: 'machine' }
  | { readonly is: 'figure'; readonly machine: MachineId; readonly key: string }
  /** A written text of the record that cannot be read; `field` as in the record. */
  | { readonly is: 'written'; readonly field: string; readonly text: string }
  | { readonly is: 'field'; readonly field: string }
  | { readonly is: 'line' }
  | { readonly is: 'station'; readonly station: StationId }
  | { readonly is: 'dimension'; readonly dimension: DimensionId }
  | { readonly is: 'body'; readonly body: BodyId }
  | { readonly is: 'material'; readonly name: string };

/** Each thing once, in the order in which it was missed first. */
export function distinctUnknowns<U>(unknown: readonly U[]): readonly U[] {
  if (unknown.length < 2) return unknown;
  const seen = new Map(unknown.map((one) => [JSON.stringify(one), one]));
  return [...seen.values()];
}
