import { type KeyboardEvent, useRef } from 'react';

interface Roving {
  readonly count: number;
  readonly active: number;
  readonly onActive: (index: number) => void;
  /** The text that type-ahead looks at. */
  readonly textAt: (index: number) => string;
  readonly page?: number;
}

const TYPE_AHEAD_MS = 700;

/**
 * Arrows, Home, End, Page Up and Down and type-ahead for a list with one tab stop.
 * @returns a key handler that answers whether it took the key.
 */
export function useRoving({ count, active, onActive, textAt, page = 10 }: Roving): (event: KeyboardEvent) => boolean {
  const typed = useRef({ text: '', at: 0 });
  return (event) => {
    if (count === 0 || event.defaultPrevented) return false;
    const go = (index: number) => {
      event.preventDefault();
      onActive(Math.min(count - 1, Math.max(0, index)));
      return true;
    };
    switch (event.key) {
      case 'ArrowDown':
        return go(active + 1);
      case 'ArrowUp':
        return go(active - 1);
      case 'Home':
        return go(0);
      case 'End':
        return go(count - 1);
      case 'PageDown':
        return go(active + page);
      case 'PageUp':
        return go(active - page);
    }
    if (event.key.length !== 1 || event.ctrlKey || event.metaKey || event.altKey || event.key === ' ') return false;
    const fresh = event.timeStamp - typed.current.at > TYPE_AHEAD_MS;
    const text = (fresh ? '' : typed.current.text) + event.key.toLocaleLowerCase('en');
    typed.current = { text, at: event.timeStamp };
    for (let step = fresh ? 1 : 0; step <= count; step++) {
      const index = (Math.max(0, active) + step) % count;
      if (textAt(index).toLocaleLowerCase('en').startsWith(text)) return go(index);
    }
    event.preventDefault();
    return true;
  };
}
