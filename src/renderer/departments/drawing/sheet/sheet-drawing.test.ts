import { describe, expect, test } from 'vitest';
import type { LineMark, Mark, Sheet, TextMark } from '../../../../shared/sheet/sheet.ts';
import { markAt, pickOf } from './hit.ts';
import { boxOfViews, fitBox, fitPaper, panPaper, zoomPaper } from './paper-look.ts';

const line = (id: string, points: LineMark['points'], more: Partial<LineMark> = {}): LineMark => ({
  is: 'line',
  kind: 'visible',
  points,
  closed: false,
  stands: [id as never],
  view: 'front',
  style: 'plain',
  ...more,
});
const text = (id: string, left: number, bottom: number): TextMark => ({
  is: 'text',
  text: '60',
  at: [left, bottom],
  heightMm: 3.5,
  widthMm: 6,
  anchor: 'start',
  turn: 0,
  bold: false,
  underlined: false,
  box: { left, bottom, right: left + 6, top: bottom + 3.5 },
  stands: [id as never],
  view: 'front',
  style: 'plain',
});
const sheetOf = (...marks: readonly Mark[]): Sheet =>
  ({ marks, widthMm: 297, heightMm: 210, frame: { left: 20, bottom: 10, right: 287, top: 200 } }) as unknown as Sheet;

describe('what is under the pointer', () => {
  const sheet = sheetOf(
    line('body:a', [
      [100, 100],
      [150, 100],
    ]),
    line('body:b', [
      [100, 103],
      [150, 103],
    ]),
    text('dimension:c', 120, 98),
    line('part:frame', [[0, 0]], { stands: [] }),
  );
  test.each([
    ['a line within reach', [110, 100.4], 'body:a'],
    ['the nearer of two', [110, 102], 'body:b'],
    ['a text that covers a line', [122, 100], 'dimension:c'],
    ['beyond the end of a line', [151, 100], 'body:a'],
    ['nothing', [110, 95], undefined],
    ['what stands for nothing', [0, 0], undefined],
  ] as const)('%s', (_, at, id) => {
    expect(markAt(sheet, at, 1.5)?.stands[0]).toBe(id);
  });

  test('a closed outline counts along its last side too', () => {
    const square = line('body:s', [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ]);
    expect(markAt(sheetOf(square), [0, 5], 0.5)).toBeUndefined();
    expect(markAt(sheetOf({ ...square, closed: true }), [0, 5], 0.5)).toBeDefined();
  });

  test('pressed again, a mark gives the next of what it stands for', () => {
    const mark = line('body:a', [], { stands: ['body:a', 'station:b'] as never });
    expect(pickOf(mark, undefined)).toBe('body:a');
    expect(pickOf(mark, 'body:a')).toBe('station:b');
    expect(pickOf(mark, 'station:b')).toBe('body:a');
    expect(pickOf(undefined, 'body:a')).toBeUndefined();
  });
});

describe('how the paper lies', () => {
  const paper = { widthMm: 297, heightMm: 210 };
  const pane = { width: 800, height: 600 };
  test('a fitted paper is wholly in sight, in the middle', () => {
    const { scale, x, y } = fitPaper(paper, pane);
    expect(x).toBeGreaterThanOrEqual(10);
    expect(y).toBeGreaterThanOrEqual(10);
    expect(x * 2 + 297 * scale).toBeCloseTo(800, 9);
    expect(y * 2 + 210 * scale).toBeCloseTo(600, 9);
  });

  test('a fitted box is in the middle, whichever way up the paper counts', () => {
    const box = { left: 100, right: 200, bottom: 20, top: 60 };
    const { scale, x, y } = fitBox(box, 210, pane);
    expect(x + 150 * scale).toBeCloseTo(400, 9);
    expect(y + (210 - 40) * scale).toBeCloseTo(300, 9);
  });

  test('what is under the pointer stays there while the paper comes closer', () => {
    const look = fitPaper(paper, pane);
    const near = zoomPaper(look, 2.5, 300, 200);
    expect((300 - near.x) / near.scale).toBeCloseTo((300 - look.x) / look.scale, 9);
    expect((200 - near.y) / near.scale).toBeCloseTo((200 - look.y) / look.scale, 9);
    expect(panPaper(near, 5, -5)).toMatchObject({ x: near.x + 5, y: near.y - 5 });
  });

  test('the views alone count for what is drawn; without any the frame does', () => {
    const away = line('x', [[1, 1]], { view: undefined });
    const views = boxOfViews(
      sheetOf(
        away,
        line('a', [
          [50, 60],
          [70, 40],
        ]),
        text('b', 65, 100),
      ),
    );
    expect(views).toEqual({ left: 50, bottom: 40, right: 71, top: 103.5 });
    expect(boxOfViews(sheetOf(away))).toEqual({ left: 20, bottom: 10, right: 287, top: 200 });
  });
});
