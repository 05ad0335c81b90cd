import path from 'node:path';
import { app, BrowserWindow, nativeTheme, screen } from 'electron';
import { BACKGROUND } from './background.ts';
import { START_PAGE } from './policy.ts';
import { MINIMUM, placeOnScreen, readWindowState, writeWindowState } from './window-state.ts';

const REMEMBER_AFTER_MS = 500;
const CASCADE = 28;

const stateFile = (): string => path.join(app.getPath('userData'), 'window-state.json');
const background = (): string => (nativeTheme.shouldUseDarkColors ? BACKGROUND.dark : BACKGROUND.light);

/** Remembers place and size soon after they change, so that even a killed program finds its place again. */
function rememberState(window: BrowserWindow): void {
  const remember = (): void => {
    if (window.isDestroyed() || window.isMinimized()) return;
    writeWindowState(stateFile(), {
      bounds: window.getNormalBounds(),
      maximised: window.isMaximized(),
      fullScreen: window.isFullScreen(),
    });
  };
  let waiting: NodeJS.Timeout | undefined;
  const soon = (): void => {
    clearTimeout(waiting);
    waiting = setTimeout(remember, REMEMBER_AFTER_MS);
  };
  window.on('resize', soon);
  window.on('move', soon);
  window.on('maximize', soon);
  window.on('unmaximize', soon);
  window.on('enter-full-screen', soon);
  window.on('leave-full-screen', soon);
  window.on('close', () => {
    clearTimeout(waiting);
    remember();
  });
}

/**
 * Makes a hardened window and begins to load the page into it. It shows itself when the page has painted. The window
 * forgets nothing by itself: whoever asks for it keeps it.
 * @param hidden it does not show itself: whoever asks for it does.
 */
export function createWindow(hidden: boolean): BrowserWindow {
  const remembered = readWindowState(stateFile());
  const screens = [screen.getPrimaryDisplay(), ...screen.getAllDisplays()].map((display) => display.workArea);
  const bounds = placeOnScreen(remembered?.bounds, screens);
  // A second window does not hide the first.
  const shift = BrowserWindow.getAllWindows().length * CASCADE;
  const window = new BrowserWindow({
    ...bounds,
    x: bounds.x + shift,
    y: bounds.y + shift,
    minWidth: MINIMUM.width,
    minHeight: MINIMUM.height,
    show: false,
    backgroundColor: background(),
    title: app.name,
    webPreferences: {
      preload: path.join(app.getAppPath(), 'out', 'preload', 'preload.cjs'),
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      sandbox: true,
      webSecurity: true,
      allowRunningInsecureContent: false,
      webviewTag: false,
      // The spelling checker would fetch its dictionaries from the network.
      spellcheck: false,
      // The page's compiled code is kept from the first start on, not only from the third.
      v8CacheOptions: 'bypassHeatCheck',
      devTools: !app.isPackaged,
    },
  });
  if (remembered?.maximised) window.maximize();
  if (remembered?.fullScreen) window.setFullScreen(true);

  // The title belongs to the shell, which knows the build's name and whether it is saved.
  window.on('page-title-updated', (event) => event.preventDefault());
  if (!hidden) window.once('ready-to-show', () => window.show());
  const follow = (): void => window.setBackgroundColor(background());
  nativeTheme.on('updated', follow);
  window.once('closed', () => nativeTheme.off('updated', follow));
  rememberState(window);

  void window.loadURL(START_PAGE);
  return window;
}
