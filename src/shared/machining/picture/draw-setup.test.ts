import { describe, expect, test } from 'vitest';
import { discInto } from './bed-section.ts';
import { drawSetup } from './draw-setup.ts';
import type { PictureItem, PictureView } from './picture.ts';
import type { Cut, LatheLook, LatheScene, Point, ShownVerdict } from './scene.ts';
import { readZones, toolRange } from './zones.ts';

/** A flange of r 95, a barrel of r 50, a second flange of r 84, on an arbor of r 8: two flanges, a lathe of 90 mm centres. */
const cut: Cut = {
  operation: undefined,
  name: 'turn',
  way: 'outside',
  from: 122,
  to: 143,
  radius: 84,
  inner: undefined,
  toolRadius: undefined,
  toolLength: undefined,
  block: [-0.5, 0.5],
  shift: 0,
};
const scene: LatheScene = {
  is: 'lathe',
  swept: [
    { from: 0, to: 12, most: 8, least: 8 },
    { from: 12, to: 40, most: 95, least: 95 },
    { from: 40, to: 120, most: 50, least: 50 },
    { from: 120, to: 145, most: 84, least: 84 },
    { from: 145, to: 165, most: 8, least: 8 },
  ],
  outline: [],
  extent: [0, 165],
  frame: {
    along: { axis: 'X', sign: 1, zero: 0 },
    back: { axis: 'Y', sign: 1, zero: 0 },
    up: { axis: 'Z', sign: 1, zero: 0 },
  },
  bed: { radius: 90, outline: [] },
  gap: undefined,
  nose: -30,
  head: { is: 'centre', length: 30 },
  tail: { point: 165, centreLength: 32, barrelDiameter: 30, out: 40, travel: 60 },
  steady: undefined,
  saddle: {
    wingRadius: 82,
    towardsHead: 60,
    towardsTail: 80,
    slideRadius: 54,
    slideWidth: 80,
    toolHeight: 16,
    blockWidth: 50,
    toolOverhang: 24,
  },
  cuts: [cut],
};
const look: LatheLook = { tool: 132, cut, shown: undefined };

const areaOf = (loop: readonly Point[]): number => {
  let sum = 0;
  loop.forEach(([x, y], i) => {
    const [u, v] = loop[(i + 1) % loop.length]!;
    sum += x * v - u * y;
  });
  return Math.abs(sum) / 2;
};
const view = (side: PictureView['side'], of: LatheScene = scene, at = look): PictureView =>
  drawSetup(of, at).views.find((one) => one.side === side)!;
const areas = (items: readonly PictureItem[], role: string): number =>
  items.reduce(
    (sum, item) =>
      item.is === 'area' && item.role === role ? sum + item.loops.reduce((all, loop) => all + areaOf(loop), 0) : sum,
    0,
  );

describe('zones', () => {
  test('each is read where the saddle stands', () => {
    const read = readZones(scene, 132);
    expect(read.map(({ kind, most, margin }) => [kind, most, margin])).toEqual([
      ['over-bed', 95, -5],
      ['over-saddle', 84, -2],
      ['over-cross-slide', 84, -30],
    ]);
    // The wings reach from 72 to 212: the first flange ends at 40 and does not pass them.
    expect(read[1]).toMatchObject({ from: 72, to: 212, at: 132.5 });
  });

  test('with the saddle by the barrel the cross slide clears', () => {
    const [, wings, slide] = readZones({ ...scene, saddle: { ...scene.saddle, slideWidth: 40 } }, 80);
    expect(wings).toMatchObject({ kind: 'over-saddle', most: 95, margin: -13 });
    expect(slide).toMatchObject({ kind: 'over-cross-slide', most: 50, margin: 4 });
  });

  test('a chuck that turns over the cross slide is read with the work', () => {
    const chuck: LatheScene = {
      ...scene,
      nose: -60,
      head: { is: 'chuck', jaws: 3, diameter: 125, jawReach: 10, length: 70, depth: 20, grip: 30, inside: false },
    };
    const slide = readZones(chuck, 30).find(({ kind }) => kind === 'over-cross-slide');
    expect(slide).toMatchObject({ most: 95 });
    const bare = { ...chuck, swept: chuck.swept.map((step) => ({ ...step, most: 8, least: 8 })) };
    // The jaws end at 10, the slide begins at −10: half the chuck's diameter and what its jaws stand out.
    expect(readZones(bare, 30).find(({ kind }) => kind === 'over-cross-slide')).toMatchObject({
      most: 72.5,
      margin: -18.5,
    });
    expect(readZones(bare, 60).find(({ kind }) => kind === 'over-cross-slide')).toMatchObject({ most: 8 });
  });

  test('a gap has its own radius, and the bed begins again behind it', () => {
    const read = readZones({ ...scene, gap: { radius: 130, length: 60 } }, 132);
    expect(
      read.filter(({ kind }) => kind === 'in-gap' || kind === 'over-bed').map(({ kind, margin }) => [kind, margin]),
    ).toEqual([
      ['in-gap', 35],
      ['over-bed', -5],
    ]);
    expect(
      readZones({ ...scene, gap: { radius: 130, length: 71 } }, 132).find(({ kind }) => kind === 'over-bed'),
    ).toMatchObject({
      most: 84,
      margin: 6,
    });
  });

  test('what is not known of a lathe has no zone', () => {
    const bare: LatheScene = {
      ...scene,
      bed: { radius: undefined, outline: [] },
      saddle: { ...scene.saddle, wingRadius: undefined, slideWidth: undefined },
    };
    expect(readZones(bare, 132)).toEqual([]);
    expect(view('front', bare).items.some((item) => item.is === 'area' && item.role === 'bed')).toBe(false);
  });

  test('the tool goes over all cuts, or all of the work without any', () => {
    expect(toolRange(scene)).toEqual([122, 143]);
    expect(toolRange({ ...scene, cuts: [] })).toEqual([0, 165]);
  });
});

describe('collisions', () => {
  test('from the front: the depth over bed, wings and cross slide, along what passes them', () => {
    const deep = areas(view('front').items, 'collision');
    expect(deep).toBeCloseTo(28 * 5 + 25 * 2 + 25 * 30, 9);
  });

  test('from the end: the segments of the discs, to the formula R²·acos(d/R) − d·√(R²−d²)', () => {
    const segment = (r: number, d: number) => r * r * Math.acos(d / r) - d * Math.sqrt(r * r - d * d);
    const exact = segment(95, 90) + segment(84, 82) + segment(84, 54);
    // The arc is drawn by chords.
    expect(areas(view('end').items, 'collision') / exact).toBeCloseTo(1, 2);
  });

  test('none is drawn where all clears', () => {
    const small: LatheScene = { ...scene, swept: scene.swept.map((step) => ({ ...step, most: 8, least: 8 })) };
    for (const { items } of drawSetup(small, look).views) expect(areas(items, 'collision')).toBe(0);
  });

  test('from above: the block stands in the tailstock’s barrel at the end of a thin cut', () => {
    const thin: Cut = { ...cut, radius: 8, from: 150, to: 165 };
    const short: LatheScene = { ...scene, saddle: { ...scene.saddle, toolOverhang: 2 }, cuts: [thin] };
    const at = { tool: 165, cut: thin, shown: undefined };
    // The barrel begins at 197, the block ends at 190: nothing yet.
    expect(areas(view('above', short, at).items, 'collision')).toBeCloseTo((145 - 140) * (58 - 10 + 2), 9);
    const wide: LatheScene = { ...short, saddle: { ...short.saddle, blockWidth: 80 } };
    const found = areas(view('above', wide, at).items, 'collision') - 20 * (84 - 10);
    expect(found).toBeCloseTo((205 - 197) * (15 - 10), 9);
  });
});

describe('a bed with its own outline', () => {
  const vee: readonly Point[] = [
    [-70, -90],
    [-50, -80],
    [-30, -90],
    [40, -90],
    [40, -85],
    [70, -85],
  ];
  test('a disc reaches into it only where it does', () => {
    expect(discInto(vee, 89)).toEqual([]);
    const loops = discInto(vee, 95);
    const inside = (x: number, y: number) => Math.hypot(x, y) <= 95.001;
    for (const loop of loops) for (const [x, y] of loop) expect(inside(x, y)).toBe(true);
    expect(loops.length).toBeGreaterThan(0);
  });
});

describe('the picture', () => {
  test('its box stays while the saddle moves', () => {
    for (const side of ['front', 'end', 'above'] as const) {
      const boxes = [122, 130, 143].map((tool) => view(side, scene, { ...look, tool }).box);
      expect(boxes[1]).toEqual(boxes[0]);
      expect(boxes[2]).toEqual(boxes[0]);
    }
  });

  test('everything lies within its box', () => {
    for (const { box, items, side } of drawSetup(scene, look).views) {
      for (const item of items) {
        if (item.is !== 'area') continue;
        for (const [x, y] of item.loops.flat()) {
          expect([side, item.role, x >= box.left && x <= box.right]).toEqual([side, item.role, true]);
          expect([side, item.role, y >= box.bottom && y <= box.top]).toEqual([side, item.role, true]);
        }
      }
    }
  });

  test('the margin of the verdict on show is measured at its place', () => {
    const shown: ShownVerdict = {
      kind: 'over-bed',
      state: 'hits',
      operation: undefined,
      margin: -5,
      has: 90,
      needs: 95,
      at: 26,
    };
    const measures = view('front', scene, { ...look, shown }).items.filter(({ is }) => is === 'measure');
    expect(measures).toEqual([
      { is: 'measure', from: [26, -95], to: [26, -90], mm: -5, means: 'margin', of: 'over-bed', state: 'hits' },
    ]);
  });

  test('room for the block is measured where it is looked at from above', () => {
    // The block's face stands 84 + 24 before the line; the work beside the cut reaches 95.
    const shown: ShownVerdict = {
      kind: 'tool-reach',
      state: 'clears',
      operation: undefined,
      margin: 24 - (95 - 84),
      has: 24,
      needs: 95 - 84,
      at: 26,
    };
    const measures = view('above', scene, { ...look, shown }).items.filter(({ is }) => is === 'measure');
    expect(measures).toMatchObject([{ from: [26, -95], to: [26, -108], mm: 13 }]);
    // Along the bed: the barrel's front stands at 197, the block ends 157.
    const along: ShownVerdict = { ...shown, kind: 'tool-block-tail', has: 65, needs: 25, margin: 40, at: 197 };
    expect(view('above', scene, { ...look, shown: along }).items.filter(({ is }) => is === 'measure')).toMatchObject([
      { from: [197, -108], to: [157, -108], mm: 40 },
    ]);
  });

  test('the same input gives the same picture', () => {
    expect(drawSetup(scene, look)).toEqual(drawSetup(scene, look));
  });
});
