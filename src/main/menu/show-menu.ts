import { Menu } from 'electron';
import type { MenuCommands, MenuState } from './menu-state.ts';
import { menuTemplate } from './menu-template.ts';

/**
 * Keeps the menu bar true to the state of the program.
 * @returns a function to call whenever something may have changed; the bar is rebuilt once, soon, and only if it differs
 */
export function keepMenu(stateNow: () => MenuState, commands: MenuCommands): () => void {
  let shown: string | undefined;
  let waiting = false;
  const show = (): void => {
    waiting = false;
    const state = stateNow();
    const key = JSON.stringify(state);
    if (key === shown) return;
    shown = key;
    Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(state, commands)));
  };
  return () => {
    if (waiting) return;
    waiting = true;
    setImmediate(show);
  };
}
