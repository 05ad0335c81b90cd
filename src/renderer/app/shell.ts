import type { WaywrightApi } from '../../shared/ipc/contract.ts';

declare global {
  interface Window {
    /** Put there by the preload script. */
    readonly waywright: WaywrightApi;
  }
}

/** The shell around this window. */
export const shell: WaywrightApi = window.waywright;
