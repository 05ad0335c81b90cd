import { useRef } from 'react';
import { useView } from '../../engine/use-engine.ts';
import type { OpenedPart } from '../../engine/views/opened.ts';
import { useWorksState } from './works-state.ts';

type Opened = Readonly<Record<string, OpenedPart>>;
const none: Opened = {};

/** The opened parts; while one more is on its way the others stay. */
export function useOpened(): Opened {
  const { opened } = useWorksState();
  const fresh = useView('opened', { parts: opened });
  const last = useRef<Opened>(none);
  if (fresh !== undefined) last.current = fresh;
  return last.current;
}
