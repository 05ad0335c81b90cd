import { err } from '../base/result.ts';

/** Why a row of a table is not taken, and what to do. */
export interface RowRefusal {
  readonly reason: string;
  readonly remedy: string;
}

export const refuseRow = (reason: string, remedy: string) => err<RowRefusal>({ reason, remedy });
