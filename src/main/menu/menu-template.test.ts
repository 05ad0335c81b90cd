import type { MenuItemConstructorOptions as Item } from 'electron';
import { describe, expect, test } from 'vitest';
import { menuActions } from '../../shared/ipc/contract.ts';
import type { FrontWindow, MenuCommands, MenuState } from './menu-state.ts';
import { menuTemplate } from './menu-template.ts';

const front: FrontWindow = {
  undo: undefined,
  redo: undefined,
  editingText: false,
  hasFile: true,
  hasBuild: true,
  readOnly: false,
};
const state: MenuState = {
  platform: 'linux',
  developer: false,
  front,
  recent: [],
  homeFolder: '/home/b',
  windows: [{ id: 1, title: 'Filing machine — Waywright', front: true }],
  theme: 'system',
};

function recorder() {
  const calls: unknown[][] = [];
  const commands = new Proxy({} as MenuCommands, {
    get:
      (_, name) =>
      (...args: unknown[]) =>
        calls.push([name, ...args]),
  });
  return { calls, commands };
}

const flat = (items: readonly Item[]): Item[] =>
  items.flatMap((item) => [item, ...(Array.isArray(item.submenu) ? flat(item.submenu) : [])]);
const all = (s: MenuState) => flat(menuTemplate(s, recorder().commands));
const find = (s: MenuState, id: string) => {
  const item = all(s).find((each) => each.id === id);
  if (item === undefined) throw new Error(`no item ${id}`);
  return item;
};
const labels = (s: MenuState) => menuTemplate(s, recorder().commands).map((item) => item.label);

describe('the menu bar', () => {
  test('has the menus of the desktop, and an application menu on macOS', () => {
    const menus = ['&File', '&Edit', '&Part', '&View', '&Window', '&Help'];
    expect(labels(state)).toEqual(menus);
    expect(labels({ ...state, platform: 'darwin' })).toEqual(['Waywright', ...menus]);
  });

  test.each(['linux', 'win32', 'darwin'] as const)('no two items of %s share a key', (platform) => {
    const keys = all({ ...state, platform }).flatMap((item) => (item.accelerator ? [String(item.accelerator)] : []));
    expect(keys.length).toBeGreaterThan(10);
    expect(new Set(keys).size).toBe(keys.length);
  });

  test('every action that the window carries out has its item', () => {
    const ids = new Set(all(state).map((item) => item.id));
    expect(menuActions.filter((action) => !ids.has(action))).toEqual([]);
  });

  test('the number of items does not depend on what is possible: disabled, not hidden', () => {
    const count = (s: MenuState) => all(s).length;
    expect(count({ ...state, front: undefined })).toBe(count(state));
    expect(count({ ...state, front: { ...front, readOnly: true } })).toBe(count(state));
  });

  test('without a build only what needs none is enabled', () => {
    const none = { ...state, front: { ...front, hasFile: false, hasBuild: false } };
    for (const id of ['new', 'open', 'example-as-corrected', 'keys']) expect(find(none, id).enabled).not.toBe(false);
    for (const id of [
      'save-copy',
      'issue-make',
      'import-csv',
      'export-csv',
      'find',
      'part-new',
      'show-in-folder',
      'undo',
    ])
      expect(find(none, id).enabled).toBe(false);
  });

  test('a read-only build can be looked at, copied and exported, not edited', () => {
    const held = { ...state, front: { ...front, readOnly: true, undo: 'add base' } };
    for (const id of ['save-copy', 'export-json', 'find', 'show-drawing']) expect(find(held, id).enabled).toBe(true);
    for (const id of ['undo', 'issue-make', 'import-csv', 'import-json', 'part-new', 'station-new', 'dimension-new'])
      expect(find(held, id).enabled).toBe(false);
  });
});

describe('undo and redo', () => {
  test('name the step, with a literal ampersand', () => {
    const s = { ...state, front: { ...front, undo: 'set bore of column', redo: 'rename nut & bolt' } };
    expect(find(s, 'undo')).toMatchObject({ label: 'Undo set bore of column', enabled: true });
    expect(find(s, 'redo')).toMatchObject({ label: 'Redo rename nut && bolt', enabled: true });
  });

  test('are disabled when there is nothing to step', () => {
    expect(find(state, 'undo')).toMatchObject({ label: 'Undo', enabled: false });
    expect(find(state, 'redo-second-key')).toMatchObject({ enabled: false });
  });

  test('belong to the typing while the keyboard is in a text field', () => {
    const s = { ...state, front: { ...front, editingText: true, undo: 'add base' } };
    expect(find(s, 'undo')).toMatchObject({ label: 'Undo Typing', enabled: true });
  });

  test('a long step is shortened', () => {
    const label = find({ ...state, front: { ...front, undo: 'x'.repeat(200) } }, 'undo').label ?? '';
    expect(label.length).toBeLessThan(70);
    expect(label.endsWith('…')).toBe(true);
  });

  test('redo has the keys of its platform', () => {
    expect(find(state, 'redo').accelerator).toBe('Ctrl+Y');
    expect(find(state, 'redo-second-key').accelerator).toBe('Ctrl+Shift+Z');
    expect(find({ ...state, platform: 'darwin' }, 'redo').accelerator).toBe('Shift+Cmd+Z');
  });
});

describe('recent builds', () => {
  const recent = [
    { path: '/home/b/builds/nut & bolt.wayw', missing: false },
    { path: '/media/stick/engine.wayw', missing: true },
  ];
  const menuOf = (s: MenuState) => find(s, 'recent').submenu as Item[];

  test('show name and folder, the missing ones marked, and open by path', () => {
    const { calls, commands } = recorder();
    const items = flat(menuTemplate({ ...state, recent }, commands));
    const menu = items.find((item) => item.id === 'recent')?.submenu as Item[];
    expect(menu[0]?.label).toBe('nut && bolt.wayw (~/builds)');
    expect(menu[1]?.label).toBe('engine.wayw (/media/stick): not found');
    (menu[1]?.click as (() => void) | undefined)?.();
    expect(calls).toEqual([['openRecent', '/media/stick/engine.wayw']]);
  });

  test('can be cleared when there are any', () => {
    expect(find({ ...state, recent }, 'clear-recent').enabled).toBe(true);
    expect(find(state, 'clear-recent').enabled).toBe(false);
    expect(menuOf(state)[0]).toMatchObject({ label: 'No Recent Builds', enabled: false });
  });
});

test('the theme in force is marked', () => {
  expect(find({ ...state, theme: 'dark' }, 'theme-dark').checked).toBe(true);
  expect(find({ ...state, theme: 'dark' }, 'theme-system').checked).toBe(false);
});

test('the developer tools are there only for developers', () => {
  const has = (s: MenuState) => all(s).some((item) => item.role === 'toggleDevTools');
  expect(has(state)).toBe(false);
  expect(has({ ...state, developer: true })).toBe(true);
});
