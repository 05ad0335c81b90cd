import { ok } from '../base/result.ts';
import type { Shape } from '../build/body.ts';
import { axes } from '../build/station.ts';
import { exactVolume } from './exact-volume.ts';
import { type Placed, shapeProblem } from './place-problem.ts';
import type { ExactShape, MeshShape } from './placed.ts';
import type { Places } from './places.ts';

/** An imported mesh, its axes turned to the part's and its origin put on its three stations. */
export function placeMesh(
  { solid, origin, turn }: Extract<Shape, { readonly type: 'imported' }>,
  places: Places,
): Placed<ExactShape> {
  const mesh = places.mesh(solid);
  const shift = origin.map((station) => places.at(station));
  const rows = turn.map((to) => ({ at: axes.indexOf(to[1] as (typeof axes)[number]), sign: to[0] === '-' ? -1 : 1 }));
  const vertices = new Float64Array(mesh.vertices.length);
  for (let i = 0; i < vertices.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const { at, sign } = rows[k]!;
      vertices[i + at] = sign * mesh.vertices[i + k]! + shift[at]!;
    }
  }
  const shape: MeshShape = { is: 'mesh', vertices, triangles: mesh.triangles };
  return exactVolume(shape) > 0 ? ok(shape) : shapeProblem('mesh-inside-out', ...origin);
}
