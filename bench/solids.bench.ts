import { BoxGeometry, type BufferGeometry, CylinderGeometry } from 'three';
import { ADDITION, Brush, Evaluator, SUBTRACTION } from 'three-bvh-csg';
import { createSolids } from '../src/shared/solid/create-solids.ts';
import { loadKernel } from '../src/shared/solid/manifold/load-kernel.ts';
import { segmentsFor } from '../src/shared/solid/mesh/segments.ts';
import type { PlacedBody } from '../src/shared/solid/placed.ts';
import { inWords, ratioLine, timesOf, timesOfRuns } from './measure.ts';
import { type BenchBody, bedPlate, edited, PART, placedOf } from './solids-part.ts';

// The solid of a part worked out anew, and after one body changed, with all that a part's figures need: mesh, volume,
// surface, centre, moments, pieces, bodies that do nothing. The peer makes a mesh alone, of as many facets.

const say = (line: string): void => console.log(line);
const kernel = await loadKernel();

function ours(start: readonly PlacedBody[]) {
  let list = start;
  const solids = createSolids({ parts: () => [PART], bodiesOf: () => list }, () => kernel);
  return {
    solids,
    compute(next: readonly PlacedBody[]) {
      list = next;
      solids.compute(PART);
      return solids.solidOf(PART)!.finished.volumeMm3;
    },
  };
}

function geometryOf(body: BenchBody): BufferGeometry {
  if (body.is === 'block') {
    const [x, y, z] = [0, 1, 2].map((k) => body.to[k]! - body.from[k]!) as [number, number, number];
    return new BoxGeometry(x, y, z).translate(body.from[0] + x / 2, body.from[1] + y / 2, body.from[2] + z / 2);
  }
  const [low, high] = body.z;
  return new CylinderGeometry(body.radius, body.radius, high - low, segmentsFor(body.radius))
    .rotateX(Math.PI / 2)
    .translate(body.x, body.y, (low + high) / 2);
}

function peer(bodies: readonly BenchBody[]): Brush {
  const evaluator = new Evaluator();
  let all: Brush | undefined;
  for (const body of bodies) {
    const brush = new Brush(geometryOf(body));
    brush.updateMatrixWorld();
    all = all ? evaluator.evaluate(all, brush, body.adds ? ADDITION : SUBTRACTION) : brush;
  }
  return all!;
}

function volumeOf({ geometry }: Brush): number {
  const position = geometry.getAttribute('position');
  const index = geometry.getIndex();
  const count = index?.count ?? position.count;
  let six = 0;
  for (let i = 0; i < count; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => index?.getX(i + k) ?? i + k) as [number, number, number];
    const [ax, ay, az] = [position.getX(a), position.getY(a), position.getZ(a)];
    const [bx, by, bz] = [position.getX(b), position.getY(b), position.getZ(b)];
    const [cx, cy, cz] = [position.getX(c), position.getY(c), position.getZ(c)];
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return six / 6;
}

for (const count of [10, 50]) {
  const bodies = bedPlate(count);
  const placed = placedOf(bodies);
  const volume = ours([]).compute(placed);
  const theirVolume = volumeOf(peer(bodies));
  // The peer's round bodies have flat facets: it may hold up to 0.2 % of a hole more.
  if (Math.abs(theirVolume / volume - 1) > 2e-3) throw new Error(`The peer makes ${theirVolume} mm³, we ${volume}.`);
  const anew = timesOfRuns(count > 20 ? 9 : 21, () => {
    const part = ours([]);
    part.compute(placed);
    part.solids.drop();
  });
  const theirs = timesOfRuns(2, () => void peer(bodies));
  say(
    ratioLine(
      `a part of ${count} bodies anew, against three-bvh-csg`,
      anew.median,
      theirs.median,
      count === 50 ? 20 : 1,
    ),
  );
}

const bodies = bedPlate(50);
const part = ours([]);
part.compute(placedOf(bodies));
const samples: number[] = [];
for (let i = -50; i < 150; i++) {
  const index = (i + 50) % bodies.length;
  const next = placedOf(edited(bodies, index, 0.25 * (1 + (i & 3))));
  const start = performance.now();
  part.compute(next);
  if (i >= 0) samples.push(performance.now() - start);
}
const { median, p99 } = timesOf(samples);
say(`one of 50 bodies changed: median ${inWords(median)}, p99 ${inWords(p99)}`);
say(`${median < 16 ? 'reached' : 'MISSED '}  one of 50 bodies changed, under 16 ms: ${inWords(median)}`);
