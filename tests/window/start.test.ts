import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CONTENT_SECURITY_POLICY } from '../../src/main/app/policy.ts';
import { type Launched, launch } from '../support/electron.ts';

// The numbers are those of the checklist in Electron's own security tutorial.
describe('the window', () => {
  let at: Launched;
  beforeAll(async () => {
    at = await launch();
  });
  afterAll(async () => {
    await at?.close();
  });

  test('opens, is shown, and paints its page', async () => {
    expect(at.page.url()).toBe('app://waywright/index.html');
    await expect.poll(() => at.page.locator('#root').evaluate((root) => root.childElementCount)).toBeGreaterThan(0);
    const visible = await at.app.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows().map((w) => w.isVisible()),
    );
    expect(visible).toEqual([true]);
  });

  test('7: the page itself keeps the policy while it loads', async () => {
    const complaints: string[] = [];
    at.page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    await at.page.reload();
    await expect.poll(() => at.page.locator('#root').evaluate((root) => root.childElementCount)).toBeGreaterThan(0);
    at.page.removeAllListeners('console');
    expect(complaints).toEqual([]);
  });

  test('2, 3: no Node in the page, and the page’s world is its own', async () => {
    const seen = await at.page.evaluate(() => ({
      process: typeof Reflect.get(globalThis, 'process'),
      require: typeof Reflect.get(globalThis, 'require'),
      electron: typeof Reflect.get(globalThis, 'electron'),
      door: Object.keys(Reflect.get(globalThis, 'waywright')).sort(),
    }));
    expect(seen).toEqual({
      process: 'undefined',
      require: 'undefined',
      electron: 'undefined',
      door: ['invoke', 'on', 'platform'],
    });
  });

  test('2, 3, 4, 6, 8, 11: the preferences of the window', async () => {
    const preferences = await at.app.evaluate(({ BrowserWindow }) => {
      // Not in the public types; the only way to ask what a window was really made with.
      const contents = BrowserWindow.getAllWindows()[0]?.webContents as unknown as {
        getLastWebPreferences(): Record<string, unknown>;
      };
      return { ...contents.getLastWebPreferences() };
    });
    expect(preferences).toMatchObject({
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInSubFrames: false,
      sandbox: true,
      webSecurity: true,
      allowRunningInsecureContent: false,
      webviewTag: false,
    });
    expect(preferences.nodeIntegrationInWorker ?? false).toBe(false);
  });

  test('5: every permission is denied', async () => {
    const states = await at.page.evaluate(async () => {
      const names = ['geolocation', 'notifications', 'camera', 'microphone', 'midi', 'clipboard-read'] as const;
      const answers: string[] = [];
      for (const name of names) {
        answers.push((await navigator.permissions.query({ name: name as PermissionName })).state);
      }
      return answers;
    });
    expect(states).toEqual(Array.from({ length: 6 }, () => 'denied'));
    expect(await at.page.evaluate(() => Notification.requestPermission())).toBe('denied');
    const camera = await at.page.evaluate(() =>
      navigator.mediaDevices.getUserMedia({ video: true }).then(
        () => 'granted',
        (error: DOMException) => error.name,
      ),
    );
    expect(camera).not.toBe('granted');
  });

  test('7: the policy is on every response, and it bites', async () => {
    const policies = await at.page.evaluate(async () => {
      const policyOf = async (address: string) => (await fetch(address)).headers.get('content-security-policy');
      const script = document.querySelector('script[src]')?.getAttribute('src') ?? '';
      return [await policyOf('/index.html'), await policyOf(script), await policyOf('/no-such-file.js')];
    });
    expect(policies).toEqual([CONTENT_SECURITY_POLICY, CONTENT_SECURITY_POLICY, CONTENT_SECURITY_POLICY]);

    const inline = await at.page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'globalThis.inlineRan = true';
      document.head.append(script);
      return Reflect.get(globalThis, 'inlineRan');
    });
    expect(inline).toBeUndefined();
    // Asked from the page itself: what the driver evaluates is exempt from the policy.
    const evaluated = await at.page.evaluate(
      () =>
        new Promise((tell) => {
          document.addEventListener('securitypolicyviolation', (event) => tell(event.effectiveDirective), {
            once: true,
          });
          const style = document.createElement('style');
          style.textContent = 'body { color: red }';
          document.head.append(style);
        }),
    );
    expect(evaluated).toBe('style-src-elem');
  });

  test('7: no request leaves the machine', async () => {
    const outcome = await at.page.evaluate(() =>
      fetch('https://127.0.0.1:9/').then(
        () => 'went out',
        () => 'held back',
      ),
    );
    expect(outcome).toBe('held back');
    const fromMain = await at.app.evaluate(({ net }) =>
      net.fetch('http://127.0.0.1:9/').then(
        () => 'went out',
        (error: Error) => error.message,
      ),
    );
    expect(fromMain).toContain('ERR_BLOCKED_BY_CLIENT');
  });

  test('12, 13: the page cannot be led elsewhere, nor hold another', async () => {
    for (const address of ['https://127.0.0.1:9/', 'file:///etc/hostname', 'data:text/html,<p>there</p>']) {
      await at.page.evaluate((there) => {
        const link = document.createElement('a');
        link.href = there;
        document.body.append(link);
        link.click();
        link.remove();
        location.href = there;
      }, address);
      await at.page.waitForTimeout(150);
      expect(at.page.url()).toBe('app://waywright/index.html');
    }
    const frames = await at.page.evaluate(() => {
      const frame = document.createElement('iframe');
      frame.src = 'data:text/html,<p>there</p>';
      const view = document.createElement('webview');
      view.setAttribute('src', 'app://waywright/index.html');
      document.body.append(frame, view);
      const isPlain = view.constructor === HTMLElement || view.constructor === HTMLUnknownElement;
      frame.remove();
      view.remove();
      return isPlain;
    });
    expect(frames).toBe(true);
  });

  test('14: no second window by the page’s own act', async () => {
    const opened = await at.page.evaluate(() => window.open('app://waywright/index.html') === null);
    expect(opened).toBe(true);
    expect(at.app.windows()).toHaveLength(1);
  });

  test('17: a message from a page that is not ours is refused', async () => {
    const answers = await at.app.evaluate(async ({ app, BrowserWindow }) => {
      const foreign = new BrowserWindow({
        show: false,
        webPreferences: { preload: `${app.getAppPath()}/out/preload/preload.cjs`, sandbox: true },
      });
      try {
        await foreign.loadURL('data:text/html,<p>elsewhere</p>');
        const ask = (channel: string): Promise<unknown> =>
          foreign.webContents.executeJavaScript(
            `waywright.invoke('${channel}', undefined).then(() => 'answered', (error) => error.message)`,
          );
        return [await ask('preferences:get'), await ask('files:recent')];
      } finally {
        foreign.destroy();
      }
    });
    for (const answer of answers) expect(answer).toMatch(/Refused '(preferences:get|files:recent)'/);
  });

  test('18: our protocol keeps to its folder', async () => {
    const statuses = await at.page.evaluate(async () => {
      const addresses = [
        '/..%2f..%2fpackage.json',
        '/%2e%2e/%2e%2e/package.json',
        '/..%5c..%5cpackage.json',
        '/.built-from',
      ];
      return Promise.all(addresses.map(async (address) => (await fetch(address)).status));
    });
    expect(statuses).toEqual([404, 404, 404, 404]);
    const file = await at.page.evaluate(() =>
      fetch('file:///etc/hostname').then(
        () => 'read',
        () => 'refused',
      ),
    );
    expect(file).toBe('refused');
  });
});

describe('the place of the window', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(path.join(os.tmpdir(), 'waywright-data-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));

  const boundsOf = ({ app }: Launched) =>
    app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getNormalBounds());

  test('is remembered, and corrected when it is no longer on any screen', async () => {
    const file = path.join(folder, 'window-state.json');
    const first = await launch({ userData: folder });
    try {
      await first.app.evaluate(({ BrowserWindow }) =>
        BrowserWindow.getAllWindows()[0]?.setBounds({ x: 140, y: 90, width: 1100, height: 700 }),
      );
      await expect.poll(() => existsSync(file) && readFileSync(file, 'utf8').includes('1100')).toBe(true);
    } finally {
      // Killed, not closed: the place must not depend on a tidy end.
      await first.kill();
    }
    const second = await launch({ userData: folder });
    try {
      expect(await boundsOf(second)).toMatchObject({ x: 140, y: 90, width: 1100, height: 700 });
    } finally {
      await second.close();
    }
    const far = { bounds: { x: 9000, y: 9000, width: 1100, height: 700 }, maximised: false, fullScreen: false };
    writeFileSync(file, JSON.stringify(far));
    const third = await launch({ userData: folder });
    try {
      expect(await boundsOf(third)).toMatchObject({ x: 410, y: 190, width: 1100, height: 700 });
    } finally {
      await third.close();
    }
  });
});
