import { useEffect } from 'react';
import type { MenuAction } from '../../shared/ipc/contract.ts';
import type { Engine } from '../engine/engine.ts';
import { cyclePanes } from '../kit/pane.tsx';
import { openMaterials } from '../materials/wanted.ts';
import { addDimension, addPart, addStation, needPart } from './adding.ts';
import type { DialogName } from './dialogs.tsx';
import { exportCsv, exportJson, exportSolid } from './exporting.ts';
import { notifyOutcome } from './notices.ts';
import { goTo } from './place.ts';
import { shell } from './shell.ts';

type OpenDialog = (name: DialogName) => void;

/** Carries out what the native menu asks for. */
function carryOut(action: MenuAction, engine: Engine, open: OpenDialog): void {
  switch (action) {
    case 'undo':
    case 'redo':
      void engine.step(action).then(notifyOutcome);
      return;
    case 'find':
      open('find');
      return;
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
      open('issue');
      return;
    case 'import-csv':
      open('import-csv');
      return;
    case 'import-json':
      open('import-json');
      return;
    case 'import-solid':
      if (needPart() !== undefined) open('import-solid');
      return;
    case 'export-csv':
      void exportCsv(engine);
      return;
    case 'export-json':
      void exportJson(engine);
      return;
    case 'export-stl':
      void exportSolid(engine, 'stl');
      return;
    case 'export-3mf':
      void exportSolid(engine, '3mf');
      return;
    case 'show-works':
      goTo({ department: 'works' });
      return;
    case 'show-drawing':
      goTo({ department: 'drawing' });
      return;
    case 'show-machining':
      goTo({ department: 'machining' });
      return;
    case 'materials':
      openMaterials();
      return;
    case 'settings':
      open('settings');
      return;
    case 'keys':
      open('keys');
      return;
    case 'next-pane':
      cyclePanes(false);
      return;
  }
}

export function useMenu(engine: Engine, open: OpenDialog): void {
  useEffect(() => shell.on('menu', ({ action }) => carryOut(action, engine, open)), [engine, open]);
}
