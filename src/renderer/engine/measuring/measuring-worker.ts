import { loadKernel } from '../../../shared/solid/manifold/load-kernel.ts';
import { kernelUrl } from '../../../shared/solid/manifold/wasm-url.ts';
import { afterMessages } from '../after-messages.ts';
import { createMeasuringHost } from './measuring-host.ts';
import type { FromMeasuring, ToMeasuring } from './protocol.ts';

// `self` is typed as a window here: the layer compiles with the window's types.
const scope = self as unknown as {
  postMessage(message: FromMeasuring, transfer: readonly ArrayBuffer[]): void;
  onmessage: ((event: MessageEvent<ToMeasuring>) => void) | null;
};

const handle = createMeasuringHost((message, transfer = []) => scope.postMessage(message, transfer), {
  later: afterMessages(),
  loadKernel: () => loadKernel({ wasmUrl: new URL(kernelUrl, self.location.href).href }),
});
scope.onmessage = (event) => handle(event.data);
