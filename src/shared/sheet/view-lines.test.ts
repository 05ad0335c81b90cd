import { describe, expect, test } from 'vitest';
import { meshOfSketch } from '../../../tests/support/part-mesh.ts';
import { type BodySketch, sketchBodies } from '../../../tests/support/sketch-bodies.ts';
import type { Axis } from '../build/station.ts';
import type { PartMesh } from '../solid/placed.ts';
import { frameOfView, frameTowards, indexOfAxis, type ViewFrame } from './view-frame.ts';
import { type ViewLines, viewLines } from './view-lines.ts';

const front = frameOfView('front', 'first');
const top = frameOfView('top', 'first');
const side = frameOfView('side', 'first');

type Three = readonly [number, number, number];

function block(s: BodySketch, low: Three, high: Three, adds = true) {
  return s.body(
    {
      type: 'block',
      x: [s.at('X', low[0]), s.at('X', high[0])],
      y: [s.at('Y', low[1]), s.at('Y', high[1])],
      z: [s.at('Z', low[2]), s.at('Z', high[2])],
    },
    { adds },
  );
}

/** Along Z through (x, y), from `from` to `to`. */
function hole(s: BodySketch, x: number, y: number, from: number, to: number, diameter: number) {
  return s.body({
    type: 'hole',
    axis: 'Z',
    from: s.at('Z', from),
    to: s.at('Z', to),
    centre: [s.at('X', x), s.at('Y', y)],
    diameter: s.size('diameter', diameter),
  });
}

function shaft(s: BodySketch, axis: Axis, steps: readonly (readonly [length: number, diameter: number])[]) {
  let at = 0;
  const others = (['X', 'Y', 'Z'] as const).filter((other) => other !== axis) as [Axis, Axis];
  for (const [length, diameter] of steps) {
    s.body({
      type: 'cylinder',
      axis,
      ends: [s.at(axis, at), s.at(axis, at + length)],
      centre: [s.at(others[0], 0), s.at(others[1], 0)],
      diameter: s.size('diameter', diameter),
    });
    at += length;
  }
}

function drilledBlock() {
  const s = sketchBodies();
  block(s, [0, 0, 0], [60, 40, 20]);
  hole(s, 30, 20, 20, 0, 10);
  return s;
}

/** An L-shaped bracket with a pocket in its foot and a hole across its back. */
function bracket() {
  const s = sketchBodies();
  block(s, [0, 0, 0], [80, 50, 12]);
  block(s, [0, 0, 0], [15, 50, 60]);
  block(s, [30, 10, 6], [70, 40, 12], false);
  s.body({
    type: 'hole',
    axis: 'X',
    from: s.at('X', 0),
    to: s.at('X', 15),
    centre: [s.at('Y', 25), s.at('Z', 40)],
    diameter: s.size('diameter', 16),
  });
  return s;
}

/** Slopes, a cross-drilled boss, a cone, and a ring of holes: everything that can hide something else. */
function heap() {
  const s = sketchBodies();
  block(s, [-40, -30, 0], [40, 30, 10]);
  s.body({
    type: 'prism',
    axis: 'Y',
    ends: [s.at('Y', -12), s.at('Y', 14)],
    corners: [
      { at: [s.at('X', -35), s.at('Z', 10)] },
      { at: [s.at('X', -5), s.at('Z', 10)] },
      { at: [s.at('X', -20), s.at('Z', 37)], radius: s.size('radius', 4) },
    ],
  });
  s.body({
    type: 'cone',
    axis: 'Z',
    ends: [s.at('Z', 5), s.at('Z', 33)],
    centre: [s.at('X', 15), s.at('Y', 3)],
    diameters: [s.size('diameter', 34), s.size('diameter', 21)],
  });
  s.body({
    type: 'hole',
    axis: 'X',
    from: s.at('X', -40),
    to: s.at('X', 40),
    centre: [s.at('Y', 2), s.at('Z', 18)],
    diameter: s.size('diameter', 7),
  });
  s.body(
    {
      type: 'hole',
      axis: 'Z',
      from: s.at('Z', 10),
      to: s.at('Z', 3),
      centre: [s.at('X', 15), s.at('Y', 3)],
      diameter: s.size('diameter', 5),
      point: s.size('angle', 118),
    },
    {
      repeats: [
        {
          type: 'circle',
          axis: 'Z',
          centre: [s.at('X', 15), s.at('Y', 3)],
          count: s.size('count', 7),
          circle: s.size('diameter', 44),
          start: s.size('angle', 11),
        },
      ],
    },
  );
  return s;
}

/** Straight stretches of the view: number and total length, seen and hidden. */
function tally({ lines }: ViewLines) {
  const sums = { visible: 0, hidden: 0, visibleMm: 0, hiddenMm: 0 };
  for (const { points, closed, isHidden } of lines) {
    const count = closed ? points.length : points.length - 1;
    for (let i = 0; i < count; i++) {
      const [ax, ay] = points[i]!;
      const [bx, by] = points[(i + 1) % points.length]!;
      sums[isHidden ? 'hidden' : 'visible']++;
      sums[isHidden ? 'hiddenMm' : 'visibleMm'] += Math.hypot(bx - ax, by - ay);
    }
  }
  return sums;
}

/** Length of a regular polygon on the circle. */
const ring = (diameter: number, sides: number) => sides * diameter * Math.sin(Math.PI / sides);

describe('known solids', () => {
  test('a block with a hole through it', async () => {
    const mesh = await meshOfSketch(drilledBlock());
    const plan = tally(viewLines(mesh, top, undefined));
    expect(plan.visibleMm).toBeCloseTo(2 * (60 + 40) + ring(10, 64), 3);
    expect(plan).toMatchObject({ visible: 4 + 64, hidden: 0, hiddenMm: 0 });
    const elevation = tally(viewLines(mesh, front, undefined));
    expect(elevation).toMatchObject({ visible: 4, hidden: 2 });
    expect(elevation.visibleMm).toBeCloseTo(2 * (60 + 20), 4);
    expect(elevation.hiddenMm).toBeCloseTo(2 * 20, 4);
  });

  test('a stepped shaft: shoulders across, no line where facets meet', async () => {
    const s = sketchBodies();
    shaft(s, 'X', [
      [20, 16],
      [35, 25],
      [10, 12],
    ]);
    const elevation = tally(viewLines(await meshOfSketch(s), front, undefined));
    // Two ends and two shoulders across, each step's outline above and below.
    expect(elevation.visibleMm).toBeCloseTo(16 + 25 + 25 + 12 + 2 * (20 + 35 + 10), 3);
    expect(elevation).toMatchObject({ visible: 4 + 6 + 2 * 2 - 4, hidden: 0 });
  });

  test('an L-shaped bracket with a pocket and a hole', async () => {
    const mesh = await meshOfSketch(bracket());
    const elevation = tally(viewLines(mesh, front, undefined));
    // The outline of an L; where the two blocks meet flush no line is drawn.
    expect(elevation.visibleMm).toBeCloseTo(80 + 12 + (80 - 15) + (60 - 12) + 15 + 60, 2);
    // Pocket: bottom and two sides; hole: two lines through the wall.
    expect(elevation.hiddenMm).toBeCloseTo(40 + 2 * 6 + 2 * 15, 2);
    const plan = tally(viewLines(mesh, top, undefined));
    expect(plan.visibleMm).toBeCloseTo(2 * (80 + 50) + 50 + 2 * (40 + 30), 2);
    expect(plan.hiddenMm).toBeCloseTo(2 * 15, 2);
    // From the left the wall stands before everything; the pocket's floor and sides lie hidden, behind the edge of nothing else.
    const left = tally(viewLines(mesh, side, undefined));
    expect(left.visibleMm).toBeCloseTo(2 * (50 + 60) + ring(16, 64), 2);
    expect(left.hiddenMm).toBeCloseTo(50 + 30 + 2 * 6, 2);
  });

  test('a rounded corner runs into flat sides without an edge, and shows its outline', async () => {
    const s = sketchBodies();
    const at = (x: number, y: number) => [s.at('X', x), s.at('Y', y)] as [never, never];
    const radius = s.size('radius', 8);
    s.body(
      {
        type: 'pocket',
        axis: 'Z',
        ends: [s.at('Z', 0), s.at('Z', 15)],
        from: at(0, 0),
        to: at(50, 30),
        radius,
      },
      { adds: true },
    );
    const elevation = tally(viewLines(await meshOfSketch(s), front, undefined));
    expect(elevation).toMatchObject({ visible: 4, hidden: 0 });
    expect(elevation.visibleMm).toBeCloseTo(2 * (50 + 15), 4);
  });
});

/** Whether a ray from a point of the part to the eye meets a triangle, found by looking at every one of them. */
function isBehindAny(mesh: PartMesh, frame: ViewFrame, at: Three, clear: number): boolean | undefined {
  const axes = [frame.across, frame.up, frame.towards];
  const see = (i: number) => axes.map(({ axis, sign }) => sign * mesh.vertices[3 * i + indexOfAxis(axis)]!);
  for (let t = 0; t < mesh.triangles.length; t += 3) {
    const [a, b, c] = [see(mesh.triangles[t]!), see(mesh.triangles[t + 1]!), see(mesh.triangles[t + 2]!)];
    const area = (b[0]! - a[0]!) * (c[1]! - a[1]!) - (b[1]! - a[1]!) * (c[0]! - a[0]!);
    if (Math.abs(area) < 1e-9) continue;
    const part = (p: number[], q: number[]) =>
      ((q[0]! - p[0]!) * (at[1] - p[1]!) - (q[1]! - p[1]!) * (at[0] - p[0]!)) / area;
    const [u, v, w] = [part(b, c), part(c, a), part(a, b)];
    if (u < 0 || v < 0 || w < 0) continue;
    const z = u * a[2]! + v * b[2]! + w * c[2]!;
    if (z > at[2] + clear) return true;
  }
  return false;
}

describe('hidden edges agree with looking along every ray', () => {
  const solids = { 'drilled block': drilledBlock, bracket, heap };
  const frames = (['X', 'Y', 'Z'] as const).flatMap((axis) => [frameTowards(axis, 1), frameTowards(axis, -1)]);

  test.each(Object.entries(solids))('%s', async (_, sketch) => {
    const mesh = await meshOfSketch(sketch());
    let checked = 0;
    for (const frame of frames) {
      const { lines } = viewLines(mesh, frame, undefined);
      // Every point of every line: does some edge of the mesh lie there, and is the nearest such edge seen?
      const depths = edgeDepths(mesh, frame);
      for (const { points, isHidden } of lines) {
        for (let i = 1; i < points.length; i++) {
          const [ax, ay] = points[i - 1]!;
          const [bx, by] = points[i]!;
          if (Math.hypot(bx - ax, by - ay) < 0.05) continue;
          const t = 0.137 + 0.6 * ((i * 0.618) % 1);
          const [x, y] = [ax + t * (bx - ax), ay + t * (by - ay)];
          const here = depths(x, y);
          expect(here.length).toBeGreaterThan(0);
          const seen = here.some((z) => !isBehindAny(mesh, frame, [x, y, z], 0.01));
          // On the rim of what covers it a ray may pass either way: ask a little to both sides as well.
          const [nx, ny] = [
            ((by - ay) / Math.hypot(bx - ax, by - ay)) * 1e-3,
            (-(bx - ax) / Math.hypot(bx - ax, by - ay)) * 1e-3,
          ];
          const open = here.some(
            (z) =>
              !isBehindAny(mesh, frame, [x + nx, y + ny, z], 0.01) ||
              !isBehindAny(mesh, frame, [x - nx, y - ny, z], 0.01),
          );
          if (isHidden) expect(seen && open, `hidden at ${x} ${y}`).toBe(false);
          else expect(seen || open, `seen at ${x} ${y}`).toBe(true);
          checked++;
        }
      }
    }
    expect(checked).toBeGreaterThan(30);
  });
});

/** Depths of all edges worth drawing (bends beyond those of facets, and outlines) whose picture passes a point. */
function edgeDepths(mesh: PartMesh, frame: ViewFrame) {
  const axes = [frame.across, frame.up, frame.towards];
  const see = (i: number) => axes.map(({ axis, sign }) => sign * mesh.vertices[3 * i + indexOfAxis(axis)]!);
  const normals = new Map<string, number[][]>();
  const edges: (readonly [key: string, a: number[], b: number[]])[] = [];
  for (let t = 0; t < mesh.triangles.length; t += 3) {
    const corners = [0, 1, 2].map((k) => see(mesh.triangles[t + k]!));
    const [p, q, r] = corners as [number[], number[], number[]];
    const u = q.map((value, k) => value - p[k]!);
    const v = r.map((value, k) => value - p[k]!);
    const n = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
    const unit = n.map((value) => value / Math.hypot(...n));
    for (let k = 0; k < 3; k++) {
      const [a, b] = [mesh.triangles[t + k]!, mesh.triangles[t + ((k + 1) % 3)]!];
      const key = a < b ? `${a} ${b}` : `${b} ${a}`;
      normals.set(key, [...(normals.get(key) ?? []), unit]);
      if (a < b) edges.push([key, see(a), see(b)]);
    }
  }
  const drawn = edges.filter(([key]) => {
    const [m, n] = normals.get(key) as [number[], number[]];
    const bend = Math.acos(
      Math.min(
        1,
        m.reduce((sum, value, k) => sum + value * n[k]!, 0),
      ),
    );
    return bend > 0.12 || m[2]! > 1e-6 !== n[2]! > 1e-6;
  });
  return (x: number, y: number): number[] => {
    const found: number[] = [];
    for (const [, a, b] of drawn) {
      const [dx, dy] = [b[0]! - a[0]!, b[1]! - a[1]!];
      const length = Math.hypot(dx, dy);
      if (length < 1e-6) continue;
      const t = ((x - a[0]!) * dx + (y - a[1]!) * dy) / (length * length);
      if (t < -1e-6 || t > 1 + 1e-6 || Math.abs((x - a[0]!) * dy - (y - a[1]!) * dx) / length > 5e-4) continue;
      found.push(a[2]! + t * (b[2]! - a[2]!));
    }
    return found;
  };
}

describe('what a view shows does not hang on where the part lies', () => {
  const turned = (mesh: PartMesh, to: (x: number, y: number, z: number) => Three): PartMesh => {
    const vertices = mesh.vertices.slice();
    for (let i = 0; i < vertices.length; i += 3) {
      vertices.set(to(mesh.vertices[i]!, mesh.vertices[i + 1]!, mesh.vertices[i + 2]!), i);
    }
    return { ...mesh, vertices };
  };

  test('moved, and turned in right angles', async () => {
    const mesh = await meshOfSketch(heap());
    const plain = tally(viewLines(mesh, top, undefined));
    const cases = [
      viewLines(
        turned(mesh, (x, y, z) => [x + 123.5, y - 77.25, z + 4096]),
        top,
        undefined,
      ),
      // About Z: the same plan, turned on the paper.
      viewLines(
        turned(mesh, (x, y, z) => [-y, x, z]),
        top,
        undefined,
      ),
      // X to Y to Z to X: what was seen from above is seen from +X.
      viewLines(
        turned(mesh, (x, y, z) => [z, x, y]),
        frameTowards('X', 1),
        undefined,
      ),
    ];
    for (const lines of cases) {
      const { visibleMm, hiddenMm } = tally(lines);
      expect(visibleMm).toBeCloseTo(plain.visibleMm, 1);
      expect(hiddenMm).toBeCloseTo(plain.hiddenMm, 1);
    }
  });
});

describe('sections', () => {
  const areaOf = ({ cut }: ViewLines) =>
    Math.abs(
      cut.reduce((sum, loop) => {
        let twice = 0;
        loop.forEach(([x, y], i) => {
          const [u, v] = loop[(i + 1) % loop.length]!;
          twice += x * v - u * y;
        });
        return sum + twice / 2;
      }, 0),
    );

  test('through a hole: two cut fields, the edges of the hole seen', async () => {
    const mesh = await meshOfSketch(drilledBlock());
    const cut = viewLines(mesh, frameTowards('Y', -1), 20);
    expect(cut.cut).toHaveLength(2);
    expect(areaOf(cut)).toBeCloseTo((60 - 10) * 20, 3);
    const sums = tally(cut);
    // Outlines of both fields, and the rims of the hole behind, above and below.
    expect(sums.visibleMm).toBeCloseTo(2 * (60 + 20) + 2 * 20, 3);
    expect(sums.hidden).toBe(0);
  });

  test('in the plane of a face what lies behind the face is cut', async () => {
    const mesh = await meshOfSketch(bracket());
    // The floor of the pocket lies at 6: looked at from above, the cut shows the floor as material.
    expect(areaOf(viewLines(mesh, frameTowards('Z', 1), 6))).toBeCloseTo(80 * 50, 3);
    expect(areaOf(viewLines(mesh, frameTowards('Z', -1), 6))).toBeCloseTo(80 * 50 - 40 * 30, 3);
    // Before and behind everything.
    expect(areaOf(viewLines(mesh, frameTowards('Z', 1), 0))).toBe(0);
    expect(viewLines(mesh, frameTowards('Z', 1), 0).lines).toEqual([]);
    expect(areaOf(viewLines(mesh, frameTowards('Z', 1), 61))).toBe(0);
    expect(tally(viewLines(mesh, frameTowards('Z', 1), 61)).visibleMm).toBeCloseTo(
      tally(viewLines(mesh, frameTowards('Z', 1), undefined)).visibleMm,
      3,
    );
  });

  test.each([-21.3, -20, -6, 0, 2, 7.77, 15, 18])('outlines of a cut through everything close, at %d', async (at) => {
    const mesh = await meshOfSketch(heap());
    for (const sign of [1, -1] as const) {
      const cut = viewLines(mesh, frameTowards('Y', sign), at);
      expect(cut.cut.length).toBeGreaterThan(0);
      // The outlines of the cut are drawn, every one in full: nothing stands before them.
      const outline = cut.cut.reduce(
        (sum, loop) =>
          sum +
          loop.reduce((length, [x, y], i) => {
            const [u, v] = loop[(i + 1) % loop.length]!;
            return length + Math.hypot(u - x, v - y);
          }, 0),
        0,
      );
      expect(tally(cut).visibleMm).toBeGreaterThan(outline - 1e-3);
    }
    // Both halves show the same cut, as the plane passes through no face.
    if (at === 7.77 || at === -21.3) {
      expect(areaOf(viewLines(mesh, frameTowards('Y', 1), at))).toBeCloseTo(
        areaOf(viewLines(mesh, frameTowards('Y', -1), at)),
        3,
      );
    }
  });
});
