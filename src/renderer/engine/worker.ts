import { idSource } from '../../shared/base/ids.ts';
import { loadKernel } from '../../shared/solid/manifold/load-kernel.ts';
import { kernelUrl } from '../../shared/solid/manifold/wasm-url.ts';
import { afterMessages } from './after-messages.ts';
import { createHost } from './host.ts';
import type { FromMeasuring } from './measuring/protocol.ts';
import type { FromWorker, ToWorker } from './protocol.ts';

// `self` is typed as a window here: the layer compiles with the window's types.
const scope = self as unknown as {
  postMessage(message: FromWorker, transfer: readonly ArrayBuffer[]): void;
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null;
};

const random32 = () => crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;
const later = afterMessages();
const handle = createHost((message, transfer = []) => scope.postMessage(message, transfer), {
  newId: idSource(random32),
  now: () => new Date().toISOString(),
  later: (run, afterMs) => {
    if (afterMs > 0) {
      const number = setTimeout(run, afterMs);
      return () => clearTimeout(number);
    }
    return later(run);
  },
  loadKernel: () => loadKernel({ wasmUrl: new URL(kernelUrl, self.location.href).href }),
  startMeasuring: (listener) => {
    const worker = new Worker(new URL('./measuring/measuring-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = (event: MessageEvent<FromMeasuring>) => listener(event.data);
    worker.onerror = ({ message }) => listener({ type: 'broken', message });
    return { post: (message) => worker.postMessage(message) };
  },
});
scope.onmessage = (event) => handle(event.data);
