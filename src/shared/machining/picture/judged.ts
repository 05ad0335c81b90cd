import type { SetupCheck, VerdictKind } from '../setup-check.ts';

/** What a picture takes from the verdicts. */
export interface Judged extends Pick<SetupCheck, 'profile' | 'extent'> {
  /** How far the barrel has to come out for the cut that needs most, mm. */
  readonly barrelOut: number | undefined;
  readonly hits: readonly VerdictKind[];
}

export function judgedOf({ profile, extent, verdicts }: SetupCheck): Judged {
  const barrel = verdicts.flatMap(({ kind, needs }) =>
    kind === 'barrel-travel' && needs !== undefined ? [needs] : [],
  );
  return {
    profile,
    extent,
    barrelOut: barrel.length === 0 ? undefined : Math.max(...barrel),
    hits: verdicts.flatMap(({ kind, state }) => (state === 'hits' ? [kind] : [])),
  };
}
