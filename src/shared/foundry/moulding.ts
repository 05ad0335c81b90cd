import type { Moulding } from '../build/casting.ts';

/** Whether the pattern stays in the mould and the metal takes its place. */
export const isFoam = (moulding: Moulding | undefined): boolean =>
  moulding === 'foam in dry sand' || moulding === 'foam in rammed sand';

/** Whether only its own weight holds the sand over a casting: it runs, and hangs together by nothing. */
export const isLooseSand = (moulding: Moulding | undefined): boolean => moulding === 'foam in dry sand';
