import type { Severity } from '../../../../shared/check/rule.ts';
import type { FindingLine } from '../../../engine/views/findings.ts';

const rank: Readonly<Record<Severity, number>> = { stop: 3, caution: 2, note: 1 };

/** The gravest of what the rules say; undefined while they say nothing. */
export const worstOf = (findings: readonly FindingLine[]): Severity | undefined =>
  findings.reduce<Severity | undefined>(
    (worst, { severity }) => (worst === undefined || rank[severity] > rank[worst] ? severity : worst),
    undefined,
  );
