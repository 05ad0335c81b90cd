import { useEffect } from 'react';
import type { MenuAction } from '../../shared/ipc/contract.ts';
import type { Engine } from '../engine/engine.ts';
import { cyclePanes } from '../kit/pane.tsx';
import { addDimension, addPart, addStation } from './adding.ts';
import type { DialogName } from './dialogs.tsx';
import { exportCsv, exportJson } from './exporting.ts';
import { notifyOutcome } from './notices.ts';
import { goTo } from './place.ts';
import { shell } from './shell.ts';

type OpenDialog = (name: DialogName) => void;

/** Carries out what the native menu asks for. */
export function carryOut(action: MenuAction, engine: Engine, open: OpenDialog): void {
  switch (action) {
    case 'undo':
    case 'redo':
      void engine.step(action).then(notifyOutcome);
      return;
    case 'find':
      return open('find');
    case 'part-new':
      void addPart(engine);
      return;
    case 'station-new':
      void addStation(engine, 'X');
      return;
    case 'dimension-new':
      void addDimension(engine);
      return;
    case 'issue-make':
      return open('issue');
    case 'import-csv':
      return open('import-csv');
    case 'import-json':
      return open('import-json');
    case 'export-csv':
      void exportCsv(engine);
      return;
    case 'export-json':
      void exportJson(engine);
      return;
    case 'show-works':
      return goTo({ department: 'works' });
    case 'show-drawing':
      return goTo({ department: 'drawing' });
    case 'settings':
      return open('settings');
    case 'keys':
      return open('keys');
    case 'next-pane':
      return cyclePanes(false);
  }
}

export function useMenu(engine: Engine, open: OpenDialog): void {
  useEffect(() => shell.on('menu', ({ action }) => carryOut(action, engine, open)), [engine, open]);
}
