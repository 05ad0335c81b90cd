import { useSyncExternalStore } from 'react';

let said = '';
const listeners = new Set<() => void>();

/** Says a sentence politely to whoever listens rather than looks. The same sentence twice is said twice. */
export function announce(sentence: string): void {
  said = said === sentence ? `${sentence}\u00a0` : sentence;
  for (const listener of listeners) listener();
}

/** Stands once in the window. */
export function Announcer() {
  const text = useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => said,
  );
  return (
    <div className="unseen" role="status" aria-live="polite">
      {text}
    </div>
  );
}
