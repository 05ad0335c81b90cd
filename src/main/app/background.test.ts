import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { BACKGROUND } from './background.ts';

test('the window opens in the colour of its page, so that nothing flashes', () => {
  const tokens = readFileSync(path.join(import.meta.dirname, '../../renderer/kit/tokens.css'), 'utf8');
  const papers = [...tokens.matchAll(/--paper:\s*(#[0-9a-f]{6})/g)].map((match) => match[1]);
  expect(new Set(papers)).toEqual(new Set([BACKGROUND.light, BACKGROUND.dark]));
  expect(papers[0]).toBe(BACKGROUND.light);
});
