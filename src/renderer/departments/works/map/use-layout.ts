import { useEffect, useRef, useState } from 'react';
import type { LayoutAnswer, LayoutCall } from './layout-worker.ts';
import type { LayoutRequest, MapLayout } from './places.ts';

/** A layout, and whether a newer one is being worked out. */
export interface LaidOut {
  readonly layout: MapLayout | undefined;
  readonly working: boolean;
  readonly problem: string | undefined;
}

/**
 * Lays out off the window's thread. The last layout stays until the next is ready; while one is being worked out only
 * the latest request waits.
 */
export function useLayout(request: LayoutRequest | undefined): LaidOut {
  const [laid, setLaid] = useState<LaidOut>({ layout: undefined, working: true, problem: undefined });
  const post = useRef<(request: LayoutRequest) => void>(undefined);
  useEffect(() => {
    const worker = new Worker(new URL('./layout-worker.ts', import.meta.url), { type: 'module' });
    let calls = 0;
    let busy = false;
    let waiting: LayoutRequest | undefined;
    const send = (next: LayoutRequest) => {
      busy = true;
      waiting = undefined;
      worker.postMessage({ call: ++calls, request: next } satisfies LayoutCall);
    };
    worker.onmessage = ({ data }: MessageEvent<LayoutAnswer>) => {
      busy = false;
      const next = waiting;
      setLaid((before) => ({
        layout: data.layout ?? before.layout,
        working: next !== undefined,
        problem: data.problem,
      }));
      if (next !== undefined) send(next);
    };
    post.current = (next) => {
      setLaid((before) => (before.working ? before : { ...before, working: true }));
      if (busy) waiting = next;
      else send(next);
    };
    return () => {
      post.current = undefined;
      worker.terminate();
    };
  }, []);
  const text = request === undefined ? undefined : JSON.stringify(request);
  useEffect(() => {
    if (text !== undefined) post.current?.(JSON.parse(text) as LayoutRequest);
  }, [text]);
  return laid;
}
