import { BrowserWindow } from 'electron';
import type { Shell } from './shell.ts';
import { start } from './start.ts';
import { createWindow } from './window.ts';

const windows = new Set<BrowserWindow>();

const shell: Shell = {
  begin: async () => {},
  open: async () => {
    const [first] = BrowserWindow.getAllWindows();
    if (first !== undefined) {
      if (first.isMinimized()) first.restore();
      first.focus();
      return;
    }
    const window = createWindow();
    windows.add(window);
    window.once('closed', () => windows.delete(window));
  },
  end: async () => {},
};

start(shell);
