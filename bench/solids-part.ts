import type { BodyId, PartId } from '../src/shared/base/ids.ts';
import { STAY } from '../src/shared/solid/moves.ts';
import type { ExactShape, Extrusion, PlacedBody, Turned } from '../src/shared/solid/placed.ts';

export const PART = 'part:0000000000' as PartId;

/** A body in the words of all who are measured. */
export type BenchBody =
  | {
      readonly is: 'block';
      readonly adds: boolean;
      readonly from: readonly [number, number, number];
      readonly to: readonly [number, number, number];
    }
  | {
      readonly is: 'cylinder';
      readonly adds: boolean;
      readonly x: number;
      readonly y: number;
      readonly z: readonly [number, number];
      readonly radius: number;
    };

/** A bed plate with raised bosses in rows, each drilled, and pads between: `count` bodies, as a drawing would list them. */
export function bedPlate(count: number): readonly BenchBody[] {
  const bosses = Math.floor((count - 2) / 2);
  const columns = Math.ceil(Math.sqrt(bosses * 1.6));
  const at = (i: number) => ({ x: 25 + 42 * (i % columns), y: 25 + 42 * Math.floor(i / columns) });
  const width = 42 * columns + 10;
  const depth = 42 * Math.ceil(bosses / columns) + 10;
  const bodies: BenchBody[] = [{ is: 'block', adds: true, from: [0, 0, 0], to: [width, depth, 30] }];
  for (let i = 0; i < bosses; i++)
    bodies.push({ is: 'cylinder', adds: true, ...at(i), z: [20, 42 + (i % 3)], radius: 15 + (i % 4) });
  for (let i = 0; i < bosses; i++)
    bodies.push({ is: 'cylinder', adds: false, ...at(i), z: [-1, 60], radius: 5 + (i % 3) });
  while (bodies.length < count)
    bodies.push({ is: 'block', adds: false, from: [-1, depth / 2 - 4, 24], to: [width + 1, depth / 2 + 4, 50] });
  return bodies;
}

/** The same list with another size of one body: its radius, or its height. */
export function edited(bodies: readonly BenchBody[], index: number, by: number): readonly BenchBody[] {
  return bodies.map((body, i): BenchBody => {
    if (i !== index) return body;
    if (body.is === 'cylinder') return { ...body, radius: body.radius + by };
    return { ...body, to: [body.to[0], body.to[1], body.to[2] + by] };
  });
}

function shapeOf(body: BenchBody): ExactShape {
  if (body.is === 'cylinder') {
    const { x, y, z, radius } = body;
    const outline = [
      { a: z[0], r: 0 },
      { a: z[1], r: 0 },
      { a: z[1], r: radius },
      { a: z[0], r: radius },
    ];
    return { is: 'turned', axis: 'Z', u: x, v: y, outline } satisfies Turned;
  }
  const [[x0, y0, z0], [x1, y1, z1]] = [body.from, body.to];
  const corner = (u: number, v: number) => ({ u, v, bulge: 0 });
  const outline = [corner(x0, y0), corner(x1, y0), corner(x1, y1), corner(x0, y1)];
  return { is: 'extrusion', axis: 'Z', a0: z0, a1: z1, outline } satisfies Extrusion;
}

const known = new WeakMap<BenchBody, PlacedBody>();

/** The bodies as placing hands them out: the same object for what did not change. */
export const placedOf = (bodies: readonly BenchBody[]): readonly PlacedBody[] =>
  bodies.map((body, i) => {
    const before = known.get(body);
    if (before) return before;
    const placed: PlacedBody = {
      record: { id: `body:${i}` as BodyId, adds: body.adds, finish: 'as cast' } as PlacedBody['record'],
      shape: shapeOf(body),
      moves: [STAY],
      problem: undefined,
      stations: [],
      dimensions: [],
    };
    known.set(body, placed);
    return placed;
  });
