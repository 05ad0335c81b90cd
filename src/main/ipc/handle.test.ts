import { describe, expect, test } from 'vitest';
import { BugError } from '../../shared/base/assert.ts';
import { channels } from '../../shared/ipc/contract.ts';
import { handle, type IncomingEvent } from './handle.ts';
import { schemas } from './schemas.ts';

type Listener = (event: IncomingEvent, payload: unknown) => Promise<unknown>;

function door() {
  const listeners = new Map<string, Listener>();
  return {
    handle: (channel: string, listener: Listener) => void listeners.set(channel, listener),
    knock: async (channel: string, payload: unknown, from: Partial<IncomingEvent> = {}) => {
      const ours = { url: 'app://waywright/index.html', parent: null };
      const event = { sender: { id: 7 }, senderFrame: ours, ...from };
      return listeners.get(channel)?.(event, payload);
    },
  };
}

function recentDoor() {
  const d = door();
  const seen: unknown[] = [];
  handle(d, 'files:open', schemas['files:open'], async (request, sender) => void seen.push([request, sender]));
  return { ...d, seen };
}

describe('the door', () => {
  test('lets our own main frame in and says who asked', async () => {
    const d = recentDoor();
    await d.knock('files:open', { recent: '/b/engine.wayw' });
    await d.knock('files:open', { recent: undefined });
    expect(d.seen).toEqual([
      [{ recent: '/b/engine.wayw' }, 7],
      [{ recent: undefined }, 7],
    ]);
  });

  test.each([
    ['a foreign site', 'https://example.test/index.html'],
    ['a file', 'file:///b/index.html'],
    ['another host of our scheme', 'app://elsewhere/index.html'],
    ['a look-alike', 'app://waywright.example.test/'],
    ['an address that is none', 'about'],
    ['an empty page', 'about:blank'],
  ])('refuses %s', async (_, url) => {
    const d = recentDoor();
    await expect(d.knock('files:open', { recent: undefined }, { senderFrame: { url, parent: null } })).rejects.toThrow(
      BugError,
    );
    expect(d.seen).toEqual([]);
  });

  test('refuses a subframe, even of our own origin', async () => {
    const d = recentDoor();
    const senderFrame = { url: 'app://waywright/index.html', parent: {} };
    await expect(d.knock('files:open', { recent: undefined }, { senderFrame })).rejects.toThrow(BugError);
    expect(d.seen).toEqual([]);
  });

  test('refuses a frame that is gone', async () => {
    const d = recentDoor();
    await expect(d.knock('files:open', { recent: undefined }, { senderFrame: null })).rejects.toThrow(BugError);
  });

  test.each([
    ['nothing at all', undefined],
    ['a bare string', '/b/engine.wayw'],
    ['a number for a path', { recent: 3 }],
    ['an empty path', { recent: '' }],
    ['an extra field', { recent: undefined, force: true }],
  ])('refuses %s', async (_, payload) => {
    const d = recentDoor();
    await expect(d.knock('files:open', payload)).rejects.toThrow(BugError);
    expect(d.seen).toEqual([]);
  });
});

const part = {
  kind: 'part',
  id: 'part:base',
  name: 'base',
  number: '',
  sheet: '',
  make: 'cast',
  material: '',
  quantity: 1,
  note: '',
  order: 1,
};
const emptyDiff = { added: [], updated: [], removed: [] };
const commit = (diff: unknown) => ({ revision: 3, label: 'add base', diff });
const accepts = (channel: keyof typeof schemas, payload: unknown) => schemas[channel].safeParse(payload).success;

describe('schemas', () => {
  test('there is one for every channel and no other', () => {
    expect(Object.keys(schemas).sort()).toEqual([...channels].sort());
  });

  test.each(channels)('%s refuses a payload of the wrong kind and an extra field', (channel) => {
    expect(accepts(channel, 42)).toBe(false);
    expect(accepts(channel, { surprise: 1 })).toBe(false);
  });

  test('records in a diff are validated by the schemas of their kinds', () => {
    expect(accepts('build:commit', commit({ ...emptyDiff, added: [part] }))).toBe(true);
    expect(accepts('build:commit', commit({ ...emptyDiff, updated: [[part, { ...part, name: 'bed' }]] }))).toBe(true);
    for (const wrong of [
      { ...part, kind: 'cart' },
      { ...part, quantity: 0 },
      { ...part, name: ' base' },
      { ...part, id: 'station:base' },
      { ...part, colour: 'red' },
      null,
    ]) {
      expect(accepts('build:commit', commit({ ...emptyDiff, added: [wrong] }))).toBe(false);
      expect(accepts('build:commit', commit({ ...emptyDiff, removed: [wrong] }))).toBe(false);
      expect(accepts('build:commit', commit({ ...emptyDiff, updated: [[part, wrong]] }))).toBe(false);
    }
    expect(accepts('build:commit', commit({ ...emptyDiff, moved: [] }))).toBe(false);
    expect(accepts('build:commit', { ...commit(emptyDiff), revision: -1 })).toBe(false);
    expect(accepts('build:commit', { ...commit(emptyDiff), revision: 1.5 })).toBe(false);
  });

  test.each([
    ['build:step', { revision: 1, direction: 'sideways' }],
    ['issue:make', { letter: '', title: '', note: '' }],
    ['issue:make', { letter: 'A/B', title: '', note: '' }],
    ['files:open-example', { state: '../../secret' }],
    ['files:open-dropped', { paths: [] }],
    ['files:pick-text', { kind: 'exe' }],
    ['preferences:set', { theme: 'pink' }],
  ] as const)('%s refuses %j', (channel, payload) => {
    expect(accepts(channel, payload)).toBe(false);
  });
});
