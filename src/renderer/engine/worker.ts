import { idSource } from '../../shared/base/ids.ts';
import { createHost } from './host.ts';
import type { FromWorker, ToWorker } from './protocol.ts';

// `self` is typed as a window here: the layer compiles with the window's types.
const scope = self as unknown as {
  postMessage(message: FromWorker): void;
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null;
};

const random32 = () => crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;
const handle = createHost((message) => scope.postMessage(message), {
  newId: idSource(random32),
  now: () => new Date().toISOString(),
});
scope.onmessage = (event) => handle(event.data);
