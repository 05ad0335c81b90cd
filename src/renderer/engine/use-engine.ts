import { createContext, useCallback, useContext, useSyncExternalStore } from 'react';
import { assert } from '../../shared/base/assert.ts';
import type { Engine, FileState } from './engine.ts';
import type { ViewModel, ViewName, ViewParams } from './views.ts';

export const EngineContext = createContext<Engine | undefined>(undefined);

export function useEngine(): Engine {
  const engine = useContext(EngineContext);
  assert(engine !== undefined, 'the window stands inside the engine');
  return engine;
}

/** What is open in this window, and how its saving stands. */
export function useFile(): FileState {
  const engine = useEngine();
  return useSyncExternalStore(engine.onFile, engine.file);
}

/** @returns the model, kept up to date while the component stands; undefined until the first comes. */
export function useView<N extends ViewName>(name: N, params: ViewParams<N>): ViewModel<N> | undefined {
  const engine = useEngine();
  const key = JSON.stringify(params);
  // biome-ignore lint/correctness/useExhaustiveDependencies: parameters are compared by their text, not their identity
  const subscribe = useCallback((listener: () => void) => engine.watch(name, params, listener), [engine, name, key]);
  return useSyncExternalStore(subscribe, () => engine.model(name, params));
}

/** Whether the build of this window is open for writing. Whoever asks only this is not troubled by every saving. */
export function useIsEditable(): boolean {
  const engine = useEngine();
  return useSyncExternalStore(engine.onFile, () => {
    const file = engine.file();
    return file.is === 'open' && file.readOnly === undefined;
  });
}
