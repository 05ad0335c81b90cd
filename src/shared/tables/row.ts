/** Whether a table row was read on a printed or scanned page, or is remembered and still to be checked. */
export type RowStatus = 'read' | 'from memory';

/** A tolerance looked up in a published table. */
export interface TableTolerance {
  /** Half of the band: the permitted deviation either way, in mm (degrees for angles). */
  readonly plusMinus: number;
  /** The row in words, with its source; ends in "(from memory)" when it was not read on a page. */
  readonly row: string;
  readonly status: RowStatus;
}
