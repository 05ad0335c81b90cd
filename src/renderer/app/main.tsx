import '../kit/fonts.css';
import '../kit/tokens.css';
import '../kit/kit.css';
import './app.css';
import { createRoot } from 'react-dom/client';
import { assert } from '../../shared/base/assert.ts';
import { createEngine, type EnginePort } from '../engine/engine.ts';
import type { FromWorker } from '../engine/protocol.ts';
import { markStage } from '../engine/stages.ts';
import { EngineContext } from '../engine/use-engine.ts';
import { App } from './app.tsx';
import { shell } from './shell.ts';

markStage('script');
const worker = new Worker(new URL('../engine/worker.ts', import.meta.url), { type: 'module' });
const port: EnginePort = {
  post: (message) => worker.postMessage(message),
  listen: (listener) => {
    worker.onmessage = (event: MessageEvent<FromWorker>) => listener(event.data);
  },
};
const engine = createEngine(port, shell);
shell.on('build:replaced', () => void engine.reload());

const root = document.getElementById('root');
assert(root !== null, 'index.html has a root');
createRoot(root).render(
  <EngineContext value={engine}>
    <App />
  </EngineContext>,
);
void engine.reload();
