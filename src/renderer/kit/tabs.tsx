import type { ReactNode } from 'react';

interface TabsProps<V extends string> {
  readonly label: string;
  readonly tabs: readonly { readonly value: V; readonly label: ReactNode }[];
  readonly value: V;
  readonly onChange: (value: V) => void;
  /** Id of the panel that shows the chosen tab. */
  readonly panel: string;
}

/** A tab list with one tab stop; arrows choose. The panel carries `role="tabpanel"` and the given id. */
export function Tabs<V extends string>({ label, tabs, value, onChange, panel }: TabsProps<V>) {
  const onKeyDown = (event: React.KeyboardEvent<HTMLDivElement>) => {
    const here = tabs.findIndex((tab) => tab.value === value);
    const to =
      event.key === 'ArrowRight'
        ? (here + 1) % tabs.length
        : event.key === 'ArrowLeft'
          ? (here - 1 + tabs.length) % tabs.length
          : event.key === 'Home'
            ? 0
            : event.key === 'End'
              ? tabs.length - 1
              : undefined;
    const next = to === undefined ? undefined : tabs[to];
    if (next === undefined || to === undefined) return;
    event.preventDefault();
    onChange(next.value);
    event.currentTarget.querySelectorAll<HTMLElement>('[role="tab"]')[to]?.focus();
  };
  return (
    <div className="tabs" role="tablist" aria-label={label} onKeyDown={onKeyDown}>
      {tabs.map((tab) => (
        <button
          key={tab.value}
          type="button"
          role="tab"
          className="tab"
          aria-selected={tab.value === value}
          aria-controls={panel}
          tabIndex={tab.value === value ? 0 : -1}
          onClick={() => onChange(tab.value)}
        >
          {tab.label}
        </button>
      ))}
    </div>
  );
}
