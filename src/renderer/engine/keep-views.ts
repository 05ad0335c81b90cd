import type { WaywrightApi } from '../../shared/ipc/contract.ts';
import type { Engine } from './engine.ts';
import type { FromWorker, ToWorker } from './protocol.ts';

/** An engine of its own that works out one build and goes. */
export interface PassingEngine {
  post(message: ToWorker): void;
  listen(listener: (message: FromWorker) => void): void;
  end(): void;
}

// Long enough for whoever thinks between two edits: working out a large build takes a second of a processor.
const QUIET_MS = 5_000;
const LOAD = 1;
const WRITE = 2;

/**
 * Keeps the first views of the build as it stands on disk, when nothing was edited for a while: the next opening shows
 * them at once. They are worked out from the records by an engine of their own, so that they are what the next opening
 * comes to, and the one that answers the window is not held up.
 */
export function keepViews(
  engine: Engine,
  api: Pick<WaywrightApi, 'invoke'>,
  start: () => PassingEngine,
  quietMs = QUIET_MS,
): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isAtWork = false;

  const keep = async (): Promise<void> => {
    const wanted = await api.invoke('views:wanted', undefined);
    if (wanted === undefined) return;
    const views = await firstViewsOf(wanted.records, start());
    if (views !== undefined) await api.invoke('views:keep', { views });
  };
  const restart = (): void => {
    clearTimeout(timer);
    const file = engine.file();
    if (file.is !== 'open' || file.saving.length > 0 || file.halted !== undefined) return;
    timer = setTimeout(() => {
      if (isAtWork) return restart();
      isAtWork = true;
      // Without them the next opening takes a little longer: nobody need be told.
      void keep()
        .catch((error: unknown) => console.error('The first views were not kept:', error))
        .finally(() => {
          isAtWork = false;
        });
    }, quietMs);
  };
  engine.onFile(restart);
  restart();
}

const firstViewsOf = (records: string, engine: PassingEngine): Promise<string | undefined> =>
  new Promise<string | undefined>((resolve, reject) => {
    engine.listen((message) => {
      if (message.type === 'broken') reject(new Error(message.message));
      else if (message.type === 'answer' && message.call === WRITE) resolve(message.value as string | undefined);
    });
    engine.post({ type: 'load', call: LOAD, records });
    engine.post({ type: 'first-views', call: WRITE });
  }).finally(() => engine.end());
