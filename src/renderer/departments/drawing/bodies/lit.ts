import type { BodyRow } from '../../../engine/views/bodies.ts';

export interface Lit {
  /** Bodies that are picked out. */
  readonly lit: ReadonlySet<string>;
  /** Bodies that hang on what is picked out. */
  readonly also: ReadonlySet<string>;
}

/** Which bodies light up for a selection: a body itself, or those that hang directly on a station or dimension. */
export function litBy(rows: readonly BodyRow[], subject: string | undefined, others: readonly string[]): Lit {
  const chosen = new Set<string>(subject === undefined ? others : [subject, ...others]);
  const lit = new Set<string>();
  const also = new Set<string>();
  for (const { record, on } of rows) {
    if (chosen.has(record.id)) lit.add(record.id);
    else if (on.some((id) => chosen.has(id))) also.add(record.id);
  }
  return { lit, also };
}
