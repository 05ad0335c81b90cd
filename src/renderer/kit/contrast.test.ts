import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';

// WCAG 2.2 success criteria 1.4.3 (text 4.5:1) and 1.4.11 (lines and marks 3:1); the formula is its definition of
// relative luminance and contrast ratio.
const css = readFileSync(path.join(import.meta.dirname, 'tokens.css'), 'utf8');

type Tokens = Readonly<Record<string, string>>;

const hexTokens = (text: string): Tokens =>
  Object.fromEntries([...text.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6});/g)].map((m) => [m[1], m[2]]));

const darkStart = css.indexOf('@media (prefers-color-scheme: dark)');
const darkEnd = css.indexOf('@media (prefers-contrast: more)');
const light = hexTokens(css.slice(0, darkStart));
const themes: Readonly<Record<string, Tokens>> = {
  light,
  dark: { ...light, ...hexTokens(css.slice(darkStart, darkEnd)) },
};

function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

const surfaces = ['paper', 'sheet', 'sunk'] as const;
const washes = ['stop', 'caution', 'note', 'good', 'select'] as const;

const textPairs: readonly (readonly [string, string])[] = [
  ...surfaces.flatMap((surface) => ['ink', 'ink-soft', 'pencil', ...washes].map((text) => [text, surface] as const)),
  ...washes.flatMap((wash) => [[wash, `${wash}-wash`] as const, ['ink', `${wash}-wash`] as const]),
  ...(['select', 'note', 'stop', 'caution'] as const).map((wash) => ['ink-soft', `${wash}-wash`] as const),
  ['on-select', 'select'],
  ['sheet', 'ink'],
];
const linePairs = surfaces.map((surface) => ['line', surface] as const);

test('the formula: black on white is 21, a colour on itself 1', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  expect(contrast('#857d6e', '#857d6e')).toBe(1);
});

describe.each(Object.entries(themes))('%s', (name, tokens) => {
  test('the theme gives every colour', () => {
    expect(
      name === 'dark' ? Object.keys(hexTokens(css.slice(darkStart, darkEnd))).sort() : Object.keys(tokens).sort(),
    ).toEqual(Object.keys(light).sort());
  });
  test.each(textPairs)('text %s on %s holds 4.5:1', (text, surface) => {
    expect(contrast(tokens[text]!, tokens[surface]!)).toBeGreaterThanOrEqual(4.5);
  });
  test.each(linePairs)('%s on %s holds 3:1', (line, surface) => {
    expect(contrast(tokens[line]!, tokens[surface]!)).toBeGreaterThanOrEqual(3);
  });
});
