import { useEffect } from 'react';
import type { Engine } from '../engine/engine.ts';
import { cyclePanes } from '../kit/pane.tsx';
import type { DialogName } from './dialogs.tsx';

/**
 * Keys of the window that no menu item carries. The menu's own accelerators (undo, find, help, departments) come through
 * the menu; F6 backwards has no menu item.
 */
export function useKeys(_engine: Engine, open: (name: DialogName) => void): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key === 'F6') {
        event.preventDefault();
        cyclePanes(event.shiftKey);
      } else if (event.key === 'F1') {
        event.preventDefault();
        open('keys');
      } else if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'f') {
        event.preventDefault();
        open('find');
      }
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [open]);
}
