import { contextBridge, ipcRenderer, webUtils } from 'electron';
import { type Channel, channels, events, type WaywrightApi } from '../shared/ipc/contract.ts';

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

// Files let fall on the window. Their paths are known only here; the page never sees them.
const holdsFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') === true;
window.addEventListener('dragover', (event) => {
  if (!holdsFiles(event) || event.defaultPrevented) return;
  event.preventDefault();
  if (event.dataTransfer !== null) event.dataTransfer.dropEffect = 'copy';
});
window.addEventListener('drop', (event) => {
  if (!holdsFiles(event) || event.defaultPrevented || !event.isTrusted) return;
  event.preventDefault();
  const paths = [...(event.dataTransfer?.files ?? [])]
    .map((file) => webUtils.getPathForFile(file))
    .filter((p) => p !== '');
  if (paths.length > 0) void ipcRenderer.invoke('files:open-dropped' satisfies Channel, { paths });
});
