import { useEffect, useState } from 'react';
import type { StageColours } from './stage.ts';

/** The colours of the page's tokens for the stage, anew whenever the theme or the wish for contrast changes. */
export function useColours(): StageColours {
  const [colours, setColours] = useState(readColours);
  useEffect(() => {
    const wishes = ['(prefers-color-scheme: dark)', '(prefers-contrast: more)', '(forced-colors: active)'];
    const lists = wishes.map((wish) => window.matchMedia(wish));
    const read = () => setColours(readColours());
    for (const list of lists) list.addEventListener('change', read);
    return () => {
      for (const list of lists) list.removeEventListener('change', read);
    };
  }, []);
  return colours;
}

function readColours(): StageColours {
  const style = getComputedStyle(document.documentElement);
  const token = (name: string) => style.getPropertyValue(name).trim();
  return {
    face: mixed(token('--sheet'), token('--line'), 0.42),
    edge: token('--ink'),
    lit: mixed(token('--select'), token('--sheet'), 0.12),
    also: mixed(token('--select'), token('--sheet'), 0.52),
    ghost: token('--select'),
  };
}

/** @returns a colour between two of the form `#rrggbb`. */
function mixed(from: string, to: string, part: number): string {
  const channel = (colour: string, k: number) => Number.parseInt(colour.slice(1 + 2 * k, 3 + 2 * k), 16);
  const parts = [0, 1, 2].map((k) => Math.round(channel(from, k) * (1 - part) + channel(to, k) * part));
  return parts.some(Number.isNaN) ? from : `#${parts.map((one) => one.toString(16).padStart(2, '0')).join('')}`;
}
