import { layoutMap } from './layout.ts';
import type { LayoutRequest, MapLayout } from './places.ts';

export interface LayoutCall {
  readonly call: number;
  readonly request: LayoutRequest;
}

export interface LayoutAnswer {
  readonly call: number;
  /** Undefined: it could not be laid out; `problem` says why. */
  readonly layout: MapLayout | undefined;
  readonly problem: string | undefined;
}

// `self` is typed as a window here: the layer compiles with the window's types.
const scope = self as unknown as {
  postMessage(message: LayoutAnswer): void;
  onmessage: ((event: MessageEvent<LayoutCall>) => void) | null;
};

scope.onmessage = ({ data: { call, request } }) => {
  try {
    scope.postMessage({ call, layout: layoutMap(request), problem: undefined });
  } catch (error) {
    scope.postMessage({ call, layout: undefined, problem: error instanceof Error ? error.message : String(error) });
  }
};
