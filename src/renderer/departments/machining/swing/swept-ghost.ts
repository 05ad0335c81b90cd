import { axes } from '../../../../shared/build/station.ts';
import type { LatheScene, PictureFrame } from '../../../../shared/machining/picture/scene.ts';
import type { StagePicture } from '../../../view/stage.ts';

/** Facets round the swept solid. */
const ROUND = 64;
/** Every so many of them a line along the solid. */
const EVERY = 8;
/** Lines across the bed. */
const RUNGS = 8;

type Corner = LatheScene['outline'][number];

/** Whether the outline turns at a corner so much that it is an edge: on a rounding it turns a little at each. */
function bends(before: Corner, here: Corner, next: Corner): boolean {
  const turn = Math.atan2(next.r - here.r, next.at - here.at) - Math.atan2(here.r - before.r, here.at - before.at);
  return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) > EDGE;
}

/** 25°. */
const EDGE = 0.44;

/** The swept solid with the bed beneath it, X along the bed, Y to the back, Z up: what is seen through on the stage. */
export function sweptGhost(scene: LatheScene): StagePicture {
  const profile =
    scene.outline.length > 1
      ? scene.outline
      : scene.swept.flatMap(({ from, to, most }) => [
          { at: from, r: most },
          { at: to, r: most },
        ]);
  const angles = Array.from({ length: ROUND }, (_, i) => (2 * Math.PI * i) / ROUND);
  const positions: number[] = [];
  const normals: number[] = [];
  const triangles: number[] = [];
  const edges: number[] = [];
  const at = (along: number, r: number, angle: number): readonly number[] => [
    along,
    r * Math.sin(angle),
    r * Math.cos(angle),
  ];
  profile.forEach(({ at: from, r }, i) => {
    const next = profile[i + 1];
    const before = profile[i - 1];
    if (r > 0 && (before === undefined || next === undefined || bends(before, { at: from, r }, next))) ring(from, r);
    if (next === undefined) return;
    const [dx, dr] = [next.at - from, next.r - r];
    const length = Math.hypot(dx, dr);
    if (length < 1e-9) return;
    angles.forEach((angle, k) => {
      const turned = angles[(k + 1) % ROUND]!;
      const first = positions.length / 3;
      for (const [place, radius, way] of [
        [from, r, angle],
        [next.at, next.r, angle],
        [next.at, next.r, turned],
        [from, r, turned],
      ] as const) {
        positions.push(...at(place, radius, way));
        normals.push(...at(-dr / length, dx / length, way));
      }
      triangles.push(first, first + 1, first + 2, first, first + 2, first + 3);
      if (k % EVERY === 0) edges.push(...at(from, r, angle), ...at(next.at, next.r, angle));
    });
  });
  bed();
  return {
    positions: new Float32Array(positions),
    normals: new Float32Array(normals),
    triangles: new Uint32Array(triangles),
    bodyOf: new Uint16Array(triangles.length / 3),
    edges: new Float32Array(edges),
    bodies: ['swept'],
  };

  function ring(along: number, r: number): void {
    angles.forEach((angle, k) => {
      edges.push(...at(along, r, angle), ...at(along, r, angles[(k + 1) % ROUND]!));
    });
  }

  /** The top of the bed as a frame with rungs, at its height under the line. */
  function bed(): void {
    const { radius } = scene.bed;
    if (radius === undefined) return;
    const [first, last] = [scene.extent[0] - radius * 0.3, scene.extent[1] + radius * 0.3];
    const half = radius * 0.8;
    const segment = (a: readonly [number, number], b: readonly [number, number]) =>
      edges.push(a[0], a[1], -radius, b[0], b[1], -radius);
    segment([first, -half], [last, -half]);
    segment([first, half], [last, half]);
    for (let i = 0; i <= RUNGS; i++) {
      const along = first + ((last - first) * i) / RUNGS;
      segment([along, -half], [along, half]);
    }
  }
}

/** A picture of the part as it lies in the machine, in the same places. */
export function laidInMachine(picture: StagePicture, { along, back, up }: PictureFrame): StagePicture {
  const directions = [along, back, up] as const;
  const turned = (values: Float32Array, zero: 0 | 1): Float32Array<ArrayBuffer> => {
    const out = new Float32Array(values.length);
    for (let i = 0; i < values.length; i += 3) {
      directions.forEach((direction, k) => {
        out[i + k] = direction.sign * (values[i + axes.indexOf(direction.axis)]! - zero * direction.zero);
      });
    }
    return out;
  };
  return {
    ...picture,
    positions: turned(picture.positions, 1),
    normals: turned(picture.normals, 0),
    edges: turned(picture.edges, 1),
  };
}
