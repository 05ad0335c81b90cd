import { loadKernel } from '../../../shared/solid/manifold/load-kernel.ts';
import { kernelUrl } from '../../../shared/solid/manifold/wasm-url.ts';
import { createMeasuringHost } from './measuring-host.ts';
import type { FromMeasuring, ToMeasuring } from './protocol.ts';

// `self` is typed as a window here: the layer compiles with the window's types.
const scope = self as unknown as {
  postMessage(message: FromMeasuring, transfer: readonly ArrayBuffer[]): void;
  onmessage: ((event: MessageEvent<ToMeasuring>) => void) | null;
};

// Messages that came in meanwhile go first; a timer of nothing would wait longer than it is told to.
const turns = new MessageChannel();
let waiting: (() => void) | undefined;
turns.port1.onmessage = () => {
  const run = waiting;
  waiting = undefined;
  run?.();
};
const handle = createMeasuringHost((message, transfer = []) => scope.postMessage(message, transfer), {
  later: (run) => {
    waiting = run;
    turns.port2.postMessage(undefined);
  },
  loadKernel: () => loadKernel({ wasmUrl: new URL(kernelUrl, self.location.href).href }),
});
scope.onmessage = (event) => handle(event.data);
