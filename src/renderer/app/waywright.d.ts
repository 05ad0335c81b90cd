import type { WaywrightApi } from '../../shared/ipc/contract.ts';

declare global {
  interface Window {
    /** The way to the main process; put there by the preload script. */
    readonly waywright: WaywrightApi;
  }
}
