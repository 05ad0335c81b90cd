import type { Box } from '../solid-leaf.ts';
import type { LiveLeaf } from './live-leaf.ts';

/** A body as the cells see it. */
export interface CellBody extends Box {
  readonly leaf: LiveLeaf;
  readonly adds: boolean;
  readonly machined: boolean;
}
