import { useState } from 'react';
import { readKept, writeKept } from './kept.ts';

/** A choice that is remembered on this machine. What was kept and is no longer offered counts as not kept. */
export function useKeptState<V extends string>(
  key: string,
  choices: readonly V[],
  initial: V,
): readonly [V, (value: V) => void] {
  const [value, setValue] = useState<V>(() => choices.find((choice) => choice === readKept(key)) ?? initial);
  const change = (next: V) => {
    setValue(next);
    writeKept(key, next);
  };
  return [value, change];
}
