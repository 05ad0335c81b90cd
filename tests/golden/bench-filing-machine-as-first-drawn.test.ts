import { describe, expect, test } from 'vitest';
import { createBoard } from '../../resources/examples/source/board.ts';
import { drawAsCorrected, drawAsFirstDrawn } from '../../resources/examples/source/draw.ts';
import { faults } from '../../resources/examples/source/first-drawn-faults.ts';
import { createWorks } from '../../src/shared/check/create-works.ts';
import { rules } from '../../src/shared/check/registry.ts';
import type { Works } from '../../src/shared/check/works.ts';
import { named } from './named.ts';

/** `rule: part: subject`, one for each finding. */
const said = (works: Works): readonly string[] => {
  const { nameOf } = named(works.build, works.drawing);
  return works.findings().map(({ rule, at }) => `${rule} | ${nameOf(at[0])}`);
};

const corrected = drawAsCorrected();
const quiet = said(createWorks(corrected));

describe.each(faults)('$because', ({ rules: expected, draw }) => {
  test(`alone, it makes ${expected.join(', ')} speak and no other rule`, () => {
    const board = createBoard(corrected);
    draw(board);
    const spoken = said(createWorks(board.build())).filter((line) => !quiet.includes(line));
    expect(new Set(spoken.map((line) => line.split(' | ')[0]))).toEqual(new Set(expected));
  });
});

test('every rule of the drawing office has something to say of the first drawings', () => {
  const spoken = new Set(
    createWorks(drawAsFirstDrawn())
      .findings()
      .map(({ rule }) => rule),
  );
  const office = rules.filter(({ department }) => department === 'drawing').map(({ id }) => id);
  expect(office.filter((id) => !spoken.has(id))).toEqual([]);
});
