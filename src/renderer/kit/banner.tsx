import type { ReactNode } from 'react';
import type { Severity } from '../../shared/check/rule.ts';
import { SeverityMark } from './marks.tsx';

interface BannerProps {
  readonly severity: Severity;
  readonly children: ReactNode;
  readonly actions?: ReactNode;
}

/** A message across the window that stays until the matter is settled. */
export function Banner({ severity, children, actions }: BannerProps) {
  return (
    <div className={`banner ${severity}`} role={severity === 'stop' ? 'alert' : 'status'}>
      <SeverityMark severity={severity} word />
      <div className="words">{children}</div>
      {actions}
    </div>
  );
}
