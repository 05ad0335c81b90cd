import { contextBridge, ipcRenderer } from 'electron';
import { channels, events, type WaywrightApi } from '../shared/ipc/contract.ts';

// Runs sandboxed beside the page and hands it two named functions. No Electron object, and no event object, crosses.
const api: WaywrightApi = {
  invoke: (channel, request) =>
    channels.includes(channel)
      ? ipcRenderer.invoke(channel, request)
      : Promise.reject(new Error(`There is no channel '${String(channel)}'.`)),
  on: (event, listener) => {
    if (!events.includes(event)) throw new Error(`There is no event '${String(event)}'.`);
    const hear = (_event: unknown, payload: Parameters<typeof listener>[0]): void => listener(payload);
    ipcRenderer.on(event, hear);
    return () => {
      ipcRenderer.off(event, hear);
    };
  },
  platform: process.platform === 'darwin' || process.platform === 'win32' ? process.platform : 'linux',
};

contextBridge.exposeInMainWorld('waywright', api);
