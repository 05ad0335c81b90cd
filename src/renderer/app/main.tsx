// The order is meant: modules run in it.
import { engineWorker, startEngine } from './engine-worker.ts';

import '../kit/fonts.css';
import '../kit/tokens.css';
import '../kit/kit.css';
import './app.css';
import { createRoot } from 'react-dom/client';
import { assert } from '../../shared/base/assert.ts';
import { createEngine, type EnginePort } from '../engine/engine.ts';
import { keepViews } from '../engine/keep-views.ts';
import type { FromWorker } from '../engine/protocol.ts';
import { painted } from '../engine/stages.ts';
import { EngineContext } from '../engine/use-engine.ts';
import { App } from './app.tsx';
import { shell } from './shell.ts';

const port: EnginePort = {
  post: (message) => engineWorker.postMessage(message),
  listen: (listener) => {
    engineWorker.onmessage = (event: MessageEvent<FromWorker>) => listener(event.data);
  },
};
const engine = createEngine(port, shell, painted);
keepViews(engine, shell, () => {
  const worker = startEngine();
  return {
    post: (message) => worker.postMessage(message),
    listen: (listener) => {
      worker.onmessage = (event: MessageEvent<FromWorker>) => listener(event.data);
      worker.onerror = ({ message }) => listener({ type: 'broken', call: undefined, message });
    },
    end: () => worker.terminate(),
  };
});
shell.on('build:replaced', () => void engine.reload());

const root = document.getElementById('root');
assert(root !== null, 'index.html has a root');
createRoot(root).render(
  <EngineContext value={engine}>
    <App />
  </EngineContext>,
);
void engine.reload();
