import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { z } from 'zod';

/** Lengths in device-independent pixels. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface WindowState {
  readonly bounds: Rectangle;
  readonly maximised: boolean;
  readonly fullScreen: boolean;
}

const wholeNumber = z.int();
const size = z.int().positive();
const stateSchema = z.strictObject({
  bounds: z.strictObject({ x: wholeNumber, y: wholeNumber, width: size, height: size }),
  maximised: z.boolean(),
  fullScreen: z.boolean(),
});

export const MINIMUM = { width: 880, height: 560 } as const;
const FIRST = { width: 1440, height: 900 } as const;

/** How much of the strip by which a window is dragged must be on a screen for the window to count as reachable. */
const GRIP = { height: 40, visibleWidth: 120, visibleHeight: 20 } as const;

/** @returns what was remembered, or undefined when there is nothing or it cannot be read. */
export function readWindowState(file: string): WindowState | undefined {
  try {
    return stateSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    return undefined;
  }
}

/** Remembers in one step: a crash in the middle leaves the old state. Failing to remember is no reason to disturb anyone. */
export function writeWindowState(file: string, state: WindowState): void {
  try {
    writeFileSync(`${file}.new`, JSON.stringify(state));
    renameSync(`${file}.new`, file);
  } catch (error) {
    console.error('The place of the window could not be remembered:', error);
  }
}

const overlap = (fromA: number, lengthA: number, fromB: number, lengthB: number): number =>
  Math.min(fromA + lengthA, fromB + lengthB) - Math.max(fromA, fromB);

const isReachable = (window: Rectangle, screen: Rectangle): boolean =>
  overlap(window.x, window.width, screen.x, screen.width) >= GRIP.visibleWidth &&
  overlap(window.y, GRIP.height, screen.y, screen.height) >= GRIP.visibleHeight;

const centred = (width: number, height: number, screen: Rectangle): Rectangle => ({
  x: Math.round(screen.x + (screen.width - width) / 2),
  y: Math.round(screen.y + (screen.height - height) / 2),
  width,
  height,
});

/**
 * Where to open a window: where it was, unless that place is no longer on any screen (a monitor was unplugged); then in
 * the middle of the first screen. Never larger than the screen that it is on.
 * @param screens the usable areas of the screens, the main one first
 */
export function placeOnScreen(wanted: Rectangle | undefined, screens: readonly Rectangle[]): Rectangle {
  const [main] = screens;
  if (main === undefined) return { x: 0, y: 0, ...FIRST };
  const screen = wanted === undefined ? undefined : screens.find((candidate) => isReachable(wanted, candidate));
  const home = screen ?? main;
  const { width, height } = wanted ?? FIRST;
  const fitting = { width: Math.min(width, home.width), height: Math.min(height, home.height) };
  return wanted === undefined || screen === undefined
    ? centred(fitting.width, fitting.height, main)
    : { x: wanted.x, y: wanted.y, ...fitting };
}
