import type { ReactNode } from 'react';

interface PaneProps {
  readonly title: string;
  /** Beside the title: counts, marks, tabs. */
  readonly beside?: ReactNode;
  /** At the right end of the head. */
  readonly actions?: ReactNode;
  readonly children: ReactNode;
  readonly className?: string;
}

/** A sheet of the window with a title-block head. F6 goes from pane to pane. */
export function Pane({ title, beside, actions, children, className = '' }: PaneProps) {
  return (
    <section className={`pane ${className}`} aria-label={title} data-pane tabIndex={-1}>
      <header className="pane-head">
        <h2>{title}</h2>
        {beside}
        <span className="spring" />
        {actions}
      </header>
      <div className="pane-body">{children}</div>
    </section>
  );
}

/** Moves the focus to the next (or previous) pane: to what was focused in it last, else to the first control in it. */
export function cyclePanes(backwards: boolean): void {
  const panes = [...document.querySelectorAll<HTMLElement>('[data-pane]')].filter((p) => p.offsetParent !== null);
  if (panes.length === 0) return;
  const here = panes.findIndex((pane) => pane.contains(document.activeElement));
  const next = panes[(here + (backwards ? -1 : 1) + panes.length) % panes.length] ?? panes[0];
  // One after the other: a list of selectors would give what stands first on the sheet, the tabs in its head.
  const inside =
    next?.querySelector<HTMLElement>('[data-pane-entry]') ??
    next?.querySelector<HTMLElement>('[tabindex="0"], input, button, select');
  (inside ?? next)?.focus();
}
