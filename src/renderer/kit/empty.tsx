import type { ReactNode } from 'react';

/** What stands where nothing is yet: says what belongs here and how to begin. */
export function Empty({
  title,
  children,
  actions,
}: {
  readonly title: string;
  readonly children: ReactNode;
  readonly actions?: ReactNode;
}) {
  return (
    <div className="empty">
      <h3>{title}</h3>
      {children}
      {actions !== undefined && <div className="actions">{actions}</div>}
    </div>
  );
}
