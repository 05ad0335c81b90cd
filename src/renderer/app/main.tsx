// The order is meant: modules run in it.
import { engineWorker } from './engine-worker.ts';

import '../kit/fonts.css';
import '../kit/tokens.css';
import '../kit/kit.css';
import './app.css';
import { createRoot } from 'react-dom/client';
import { assert } from '../../shared/base/assert.ts';
import { createEngine, type EnginePort } from '../engine/engine.ts';
import type { FromWorker } from '../engine/protocol.ts';
import { EngineContext } from '../engine/use-engine.ts';
import { App } from './app.tsx';
import { shell } from './shell.ts';

const port: EnginePort = {
  post: (message) => engineWorker.postMessage(message),
  listen: (listener) => {
    engineWorker.onmessage = (event: MessageEvent<FromWorker>) => listener(event.data);
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
