import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { placeOnScreen, readWindowState, writeWindowState } from './window-state.ts';

const main = { x: 0, y: 0, width: 1920, height: 1040 };
const right = { x: 1920, y: 200, width: 1280, height: 1000 };

describe('placeOnScreen', () => {
  test('the first window is centred on the main screen', () => {
    expect(placeOnScreen(undefined, [main, right])).toEqual({ x: 240, y: 70, width: 1440, height: 900 });
  });
  test('a small main screen is not exceeded', () => {
    const small = { x: 0, y: 24, width: 1024, height: 700 };
    expect(placeOnScreen(undefined, [small])).toEqual({ x: 0, y: 24, width: 1024, height: 700 });
  });
  test('a reachable place is kept, on either screen', () => {
    const onMain = { x: 30, y: 40, width: 1000, height: 700 };
    const onRight = { x: 2000, y: 260, width: 1000, height: 700 };
    expect(placeOnScreen(onMain, [main, right])).toEqual(onMain);
    expect(placeOnScreen(onRight, [main, right])).toEqual(onRight);
  });
  test('a window partly off the screen stays where it is while it can be dragged', () => {
    const halfOut = { x: -800, y: 40, width: 1000, height: 700 };
    expect(placeOnScreen(halfOut, [main])).toEqual(halfOut);
  });
  test.each([
    ['its screen is gone', { x: 2000, y: 260, width: 1000, height: 700 }],
    ['its title bar is above the screen', { x: 100, y: -300, width: 1000, height: 700 }],
    ['only a sliver is left', { x: 1900, y: 100, width: 1000, height: 700 }],
  ])('%s: back to the middle of the main screen', (_why, wanted) => {
    expect(placeOnScreen(wanted, [main])).toEqual({ x: 460, y: 170, width: 1000, height: 700 });
  });
  test('a window larger than its screen is cut to it', () => {
    expect(placeOnScreen({ x: 0, y: 0, width: 4000, height: 3000 }, [main])).toEqual(main);
  });
  test('without any screen it still answers', () => {
    expect(placeOnScreen(undefined, [])).toEqual({ x: 0, y: 0, width: 1440, height: 900 });
  });
});

describe('remembering', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(path.join(os.tmpdir(), 'waywright-window-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  test('what was written is read, and no half-written file stays', () => {
    const file = path.join(folder, 'window.json');
    const state = { bounds: main, maximised: true, fullScreen: false };
    writeWindowState(file, state);
    expect(readWindowState(file)).toEqual(state);
    expect(readdirSync(folder)).toEqual(['window.json']);
  });
  test.each([
    ['no file', undefined],
    ['cut short', '{"bounds":{"x":1'],
    ['wrong shape', '{"bounds":{"x":"left","y":0,"width":10,"height":10},"maximised":false,"fullScreen":false}'],
    ['no size', '{"bounds":{"x":0,"y":0,"width":0,"height":10},"maximised":false,"fullScreen":false}'],
  ])('%s counts as nothing remembered', (_why, text) => {
    const file = path.join(folder, 'window.json');
    if (text !== undefined) writeFileSync(file, text);
    expect(readWindowState(file)).toBeUndefined();
  });
});
