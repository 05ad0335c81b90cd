import { describe, expect, test } from 'vitest';
import type { StationId } from '../../src/shared/base/ids.ts';
import type { Shape } from '../../src/shared/build/body.ts';
import { exactSurface, exactVolume } from '../../src/shared/solid/exact-volume.ts';
import type { ExactShape } from '../../src/shared/solid/placed.ts';
import { placeSketch } from '../support/place-sketch.ts';
import { type BodySketch, sketchBodies, tetrahedron } from '../support/sketch-bodies.ts';

/**
 * Volumes and surfaces of single bodies against the formulas of mensuration. Where no other source is named: Machinery's
 * Handbook, chapters "Areas and dimensions of plane figures" and "Volumes of solids" (formulas from memory).
 */
const { PI, sqrt, sin, tan, hypot } = Math;

function shapeOf(
  draw: (sketch: BodySketch, point: (u: number, v: number) => [StationId, StationId]) => Shape,
): ExactShape {
  const sketch = sketchBodies();
  sketch.body(draw(sketch, (u, v) => [sketch.at('X', u), sketch.at('Y', v)]));
  const [placed] = placeSketch(sketch);
  expect(placed?.problem).toBeUndefined();
  return placed!.shape!;
}

const ends = ({ at }: BodySketch, a: number, b: number): [StationId, StationId] => [at('Z', a), at('Z', b)];

const cases: readonly (readonly [name: string, shape: () => ExactShape, volume: number, surface?: number])[] = [
  [
    'rectangular block: l w h',
    () =>
      shapeOf((s) => ({
        type: 'block',
        x: [s.at('X', 70), s.at('X', 10)],
        y: [s.at('Y', -5), s.at('Y', 35)],
        z: ends(s, 3, 28),
      })),
    60 * 40 * 25,
    2 * (60 * 40 + 60 * 25 + 40 * 25),
  ],
  [
    'cylinder: π d² h / 4',
    () =>
      shapeOf((s, p) => ({
        type: 'cylinder',
        axis: 'Z',
        ends: ends(s, 50, 10),
        centre: p(7, -3),
        diameter: s.size('diameter', 30),
      })),
    (PI * 30 ** 2 * 40) / 4,
    (2 * PI * 30 ** 2) / 4 + PI * 30 * 40,
  ],
  [
    'hollow cylinder: π (D² − d²) h / 4',
    () =>
      shapeOf((s, p) => ({
        type: 'cylinder',
        axis: 'Z',
        ends: ends(s, 0, 40),
        centre: p(7, -3),
        diameter: s.size('diameter', 30),
        bore: s.size('radius', 8),
      })),
    (PI * (30 ** 2 - 16 ** 2) * 40) / 4,
    (2 * PI * (30 ** 2 - 16 ** 2)) / 4 + PI * (30 + 16) * 40,
  ],
  [
    'cone: π d² h / 12',
    () =>
      shapeOf((s, p) => ({
        type: 'cone',
        axis: 'Z',
        ends: ends(s, 0, 30),
        centre: p(0, 0),
        diameters: [s.size('diameter', 20)],
      })),
    (PI * 20 ** 2 * 30) / 12,
    PI * 10 ** 2 + PI * 10 * hypot(10, 30),
  ],
  [
    'frustum of a cone: π h (D² + D d + d²) / 12',
    () =>
      shapeOf((s, p) => ({
        type: 'cone',
        axis: 'Z',
        ends: ends(s, 30, 6),
        centre: p(5, 5),
        diameters: [s.size('diameter', 40), s.size('diameter', 22)],
      })),
    (PI * 24 * (40 ** 2 + 40 * 22 + 22 ** 2)) / 12,
    PI * (20 ** 2 + 11 ** 2) + PI * (20 + 11) * hypot(9, 24),
  ],
  [
    'regular hexagonal bar: (√3 / 2) f² h over flats f',
    () =>
      shapeOf((s, p) => ({
        type: 'prism',
        axis: 'Z',
        ends: ends(s, 0, 12),
        corners: Array.from({ length: 6 }, (_, i) => {
          const r = 24 / sqrt(3);
          const corner = (i * PI) / 3;
          return { at: p(Number((r * Math.cos(corner)).toFixed(9)), Number((r * sin(corner)).toFixed(9))) };
        }),
      })),
    (sqrt(3) / 2) * 24 ** 2 * 12,
    sqrt(3) * 24 ** 2 + ((6 * 24) / sqrt(3)) * 12,
  ],
  [
    'regular octagonal bar: n R² sin(360° / n) h / 2, drawn clockwise',
    () =>
      shapeOf((s, p) => ({
        type: 'prism',
        axis: 'Z',
        ends: ends(s, 0, 9),
        corners: Array.from({ length: 8 }, (_, i) => {
          const corner = (-i * PI) / 4;
          return { at: p(Number((10 * Math.cos(corner)).toFixed(9)), Number((10 * sin(corner)).toFixed(9))) };
        }),
      })),
    8 * 10 ** 2 * (sin(PI / 4) / 2) * 9,
  ],
  [
    'trapezium prism: (a + b) h / 2 · l',
    () =>
      shapeOf((s, p) => ({
        type: 'prism',
        axis: 'Z',
        ends: ends(s, 0, 80),
        corners: [{ at: p(0, 0) }, { at: p(30, 0) }, { at: p(22, 12) }, { at: p(4, 12) }],
      })),
    ((30 + 18) / 2) * 12 * 80,
  ],
  [
    'rounded rectangle: (l w − (4 − π) r²) h',
    () =>
      shapeOf((s, p) => ({
        type: 'pocket',
        axis: 'Z',
        ends: ends(s, 0, 15),
        from: p(0, 30),
        to: p(50, 0),
        radius: s.size('radius', 6),
      })),
    (50 * 30 - (4 - PI) * 6 ** 2) * 15,
    2 * (50 * 30 - (4 - PI) * 36) + (2 * (50 + 30) - 8 * 6 + 2 * PI * 6) * 15,
  ],
  [
    'rounded square whose roundings meet is a cylinder: π d² h / 4',
    () =>
      shapeOf((s, p) => ({
        type: 'pocket',
        axis: 'Z',
        ends: ends(s, 0, 15),
        from: p(0, 0),
        to: p(20, 20),
        radius: s.size('diameter', 20),
      })),
    (PI * 20 ** 2 * 15) / 4,
    (2 * PI * 20 ** 2) / 4 + PI * 20 * 15,
  ],
  [
    'equilateral triangle with rounded corners: A − r² (3√3 − π), for each corner r² (cot 30° − 60° in radians)',
    () =>
      shapeOf((s, p) => ({
        type: 'prism',
        axis: 'Z',
        ends: ends(s, 0, 1),
        corners: [p(0, 0), p(60, 0), p(30, 51.96152422706632)].map((at) => ({ at, radius: s.size('radius', 5) })),
      })),
    (sqrt(3) / 4) * 60 ** 2 - 25 * (3 * sqrt(3) - PI),
  ],
  [
    'slot with round ends: (w c + π w² / 4) h over centres c',
    () =>
      shapeOf((s, p) => ({
        type: 'slot',
        axis: 'Z',
        ends: ends(s, 0, 7),
        centres: [p(0, 0), p(30, 40)],
        width: s.size('length', 12),
      })),
    (12 * 50 + (PI * 12 ** 2) / 4) * 7,
    2 * (12 * 50 + (PI * 12 ** 2) / 4) + (2 * 50 + PI * 12) * 7,
  ],
  [
    'spandrel (fillet): r² (1 − π / 4) h = 0.2146 r² h',
    () =>
      shapeOf((s, p) => ({
        type: 'fillet',
        axis: 'Z',
        ends: ends(s, 0, 40),
        corner: p(5, 5),
        radius: s.size('radius', 10),
        quadrant: [-1, 1],
      })),
    10 ** 2 * (1 - PI / 4) * 40,
    2 * 100 * (1 - PI / 4) + (2 * 10 + (PI * 10) / 2) * 40,
  ],
  [
    'rib: area of its triangle times its thickness',
    () =>
      shapeOf((s, p) => ({
        type: 'rib',
        axis: 'Z',
        at: s.at('Z', 20),
        thickness: s.size('length', 6),
        corners: [p(0, 0), p(40, 0), p(0, 30)],
      })),
    ((40 * 30) / 2) * 6,
    40 * 30 + (40 + 30 + 50) * 6,
  ],
  [
    'ring of square section by Pappus’s theorem: 2 π R a² (Pappus of Alexandria, Collection VII; any text on statics)',
    () =>
      shapeOf((s, p) => ({
        type: 'revolved',
        axis: 'Z',
        centre: p(1, 2),
        outline: [
          { at: s.at('Z', 0), diameter: s.size('diameter', 70) },
          { at: s.at('Z', 10), diameter: s.size('diameter', 70) },
          { at: s.at('Z', 10), diameter: s.size('diameter', 90) },
          { at: s.at('Z', 0), diameter: s.size('diameter', 90) },
        ],
      })),
    2 * PI * 40 * 10 ** 2,
    2 * PI * 40 * 40,
  ],
  [
    'ring of triangular section by Pappus’s theorem: 2 π r̄ A',
    () =>
      shapeOf((s, p) => ({
        type: 'revolved',
        axis: 'Z',
        centre: p(1, 2),
        outline: [
          { at: s.at('Z', 0), diameter: s.size('diameter', 40) },
          { at: s.at('Z', 12), diameter: s.size('diameter', 40) },
          { at: s.at('Z', 6), diameter: s.size('diameter', 58) },
        ],
      })),
    2 * PI * (20 + 9 / 3) * ((12 * 9) / 2),
  ],
  [
    'drilled blind hole: cylinder and the cone of its 118° point',
    () =>
      shapeOf((s, p) => ({
        type: 'hole',
        axis: 'Z',
        from: s.at('Z', 30),
        to: s.at('Z', 5),
        centre: p(0, 0),
        diameter: s.size('diameter', 8),
        point: s.size('angle', 118),
      })),
    (PI * 8 ** 2 * 25) / 4 + (PI * 4 ** 3) / (3 * tan((59 * PI) / 180)),
  ],
  [
    'counterbored hole: two cylinders',
    () =>
      shapeOf((s, p) => ({
        type: 'hole',
        axis: 'Z',
        from: s.at('Z', 0),
        to: s.at('Z', 20),
        centre: p(0, 0),
        diameter: s.size('diameter', 9),
        counterbore: { diameter: s.size('diameter', 15), depth: s.size('length', 8.6) },
      })),
    (PI * (15 ** 2 * 8.6 + 9 ** 2 * (20 - 8.6))) / 4,
  ],
  [
    'countersunk hole: frustum and cylinder',
    () =>
      shapeOf((s, p) => ({
        type: 'hole',
        axis: 'Z',
        from: s.at('Z', 12),
        to: s.at('Z', 0),
        centre: p(0, 0),
        diameter: s.size('diameter', 6),
        countersink: { diameter: s.size('diameter', 12), angle: s.size('angle', 90) },
      })),
    (PI * 3 * (12 ** 2 + 12 * 6 + 6 ** 2)) / 12 + (PI * 6 ** 2 * 9) / 4,
  ],
  [
    'countersink on a counterbore’s mouth: frustum, wide and narrow cylinder',
    () =>
      shapeOf((s, p) => ({
        type: 'hole',
        axis: 'Z',
        from: s.at('Z', 30),
        to: s.at('Z', 0),
        centre: p(0, 0),
        diameter: s.size('diameter', 6),
        counterbore: { diameter: s.size('diameter', 12), depth: s.size('length', 10) },
        countersink: { diameter: s.size('diameter', 16), angle: s.size('angle', 90) },
      })),
    (PI * 2 * (16 ** 2 + 16 * 12 + 12 ** 2)) / 12 + (PI * (12 ** 2 * 8 + 6 ** 2 * 20)) / 4,
  ],
  [
    'countersink that goes on below a shallow counterbore',
    () =>
      shapeOf((s, p) => ({
        type: 'hole',
        axis: 'Z',
        from: s.at('Z', 30),
        to: s.at('Z', 0),
        centre: p(0, 0),
        diameter: s.size('diameter', 6),
        counterbore: { diameter: s.size('diameter', 16), depth: s.size('length', 1) },
        countersink: { diameter: s.size('diameter', 12), angle: s.size('angle', 90) },
      })),
    (PI * 16 ** 2) / 4 + (PI * 2 * (10 ** 2 + 10 * 6 + 6 ** 2)) / 12 + (PI * 6 ** 2 * 27) / 4,
  ],
];

describe('single bodies against the formulas of mensuration', () => {
  test.each(cases.map(([name, shape, volume, surface]) => ({ name, shape, volume, surface })))(
    '$name',
    ({ shape, volume, surface }) => {
      const made = shape();
      expect(Math.abs(exactVolume(made) / volume - 1)).toBeLessThan(1e-9);
      if (surface !== undefined) expect(Math.abs(exactSurface(made) / surface - 1)).toBeLessThan(1e-9);
    },
  );

  test('a corner of a cube cut off at 10 mm along each edge: a pyramid, 10³ / 6', () => {
    const sketch = sketchBodies();
    const { at } = sketch;
    const solid = tetrahedron();
    sketch.body({
      type: 'imported',
      solid: solid.id,
      origin: [at('X', 5), at('Y', 0), at('Z', 0)],
      turn: ['+Y', '-X', '+Z'],
    });
    const [placed] = placeSketch({ ...sketch, records: () => [...sketch.records(), solid] });
    expect(exactVolume(placed!.shape!)).toBeCloseTo(1000 / 6, 10);
    expect(exactSurface(placed!.shape!)).toBeCloseTo(150 + (sqrt(3) / 4) * 200, 10);
    // x goes to Y, y to −X: the corner at (5, 0, 0) reaches back to X −5 and out to Y 10.
    expect(placed!.shape).toMatchObject({ vertices: Float64Array.of(5, 0, 0, 5, 10, 0, -5, 0, 0, 5, 0, 10) });
  });
});

/**
 * Tap drills in mm, as major diameter less pitch; the rule is *common practice*. Beside it the nearest drill of the usual
 * series as ISO 2306 lists it: M6 to M20 read on a published chart of metric thread pitches, the fine, unified and
 * trapezoidal ones from memory.
 */
test.each([
  ['M6', 5, 5],
  ['M8', 6.75, 6.8],
  ['M8x1', 7, 7],
  ['M10', 8.5, 8.5],
  ['M12', 10.25, 10.2],
  ['M20', 17.5, 17.5],
  ['1/4-20 UNC', 25.4 / 4 - 25.4 / 20, 5.1],
  ['Tr 20x4', 16, 16],
])('a hole tapped %s takes away %f mm', (thread, exact, listed) => {
  const shape = shapeOf((s, p) => ({
    type: 'hole',
    axis: 'Z',
    from: s.at('Z', 20),
    to: s.at('Z', 0),
    centre: p(0, 0),
    diameter: s.size('thread', thread),
  }));
  const radius = shape.is === 'turned' ? Math.max(...shape.outline.map(({ r }) => r)) : 0;
  expect(2 * radius).toBeCloseTo(exact, 12);
  expect(Math.abs(2 * radius - listed)).toBeLessThanOrEqual(0.051);
});
