import { markStage } from '../engine/stages.ts';

markStage('script');

export const startEngine = (): Worker =>
  new Worker(new URL('../engine/worker.ts', import.meta.url), { type: 'module' });

/** The engine's worker. It is started before anything else of the window is made: it has the longest way to go. */
export const engineWorker = startEngine();
