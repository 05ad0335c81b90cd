import { app, type Session, type WebContents } from 'electron';

/** `devtools:` is the developer's own window; `chrome-extension:` would be its extensions and is left out. */
const LOCAL_SCHEMES = ['app:', 'devtools:', 'data:', 'blob:'];

/** Denies every permission and every request that would leave the machine. */
export function hardenSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.webRequest.onBeforeRequest((request, decide) => {
    decide({ cancel: !LOCAL_SCHEMES.some((scheme) => request.url.startsWith(scheme)) });
  });
}

function hardenContents(contents: WebContents): void {
  const prevent = (event: { preventDefault(): void }): void => event.preventDefault();
  contents.on('will-navigate', prevent);
  contents.on('will-frame-navigate', prevent);
  contents.on('will-redirect', prevent);
  contents.on('will-attach-webview', prevent);
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

/** Must run before the first window: from then on no page can leave, embed or open another. */
export function hardenEveryPage(): void {
  app.on('web-contents-created', (_event, contents) => hardenContents(contents));
}

/**
 * Sandboxes every page. Not under `--no-sandbox` (the superuser on Linux, in tests): enabling it there overrides the
 * switch and every page dies.
 */
export function enableSandbox(): void {
  if (!app.commandLine.hasSwitch('no-sandbox')) app.enableSandbox();
}
