import settingsSet from '../../../src/shared/build/commands/settings-set.ts';
import type { Build } from '../../../src/shared/build/records.ts';
import { parts, routes, settings } from './bench-filing-machine.ts';
import { createBoard, drawPart } from './board.ts';
import { faults } from './first-drawn-faults.ts';
import { drawMachine, drawRoute } from './plan-board.ts';
import { shop } from './shop.ts';

/** The bench filing machine with its drawings and its plan of work put right: every gate is open. */
export function drawAsCorrected(): Build {
  const board = createBoard();
  board.run(settingsSet, { set: settings });
  for (const part of parts) drawPart(board, part);
  for (const machine of shop) drawMachine(board, machine);
  for (const route of routes) drawRoute(board, route);
  return board.build();
}

/** The same machine as its drawings first came off the board, with their faults. */
export function drawAsFirstDrawn(): Build {
  const board = createBoard(drawAsCorrected());
  for (const fault of faults) fault.draw(board);
  return board.build();
}
