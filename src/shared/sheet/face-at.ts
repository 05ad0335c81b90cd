import type { BodyId } from '../base/ids.ts';
import type { PartMesh } from '../solid/placed.ts';
import type { Point, Scale, SheetView } from './sheet.ts';
import { indexOfAxis } from './view-frame.ts';

export interface FaceAt {
  readonly body: BodyId;
  /** Number of the face within its body, as in the mesh. */
  readonly face: number;
}

/** The face that the eye sees at a point of the paper; undefined beside the part and on a cut. */
export function faceAt(mesh: PartMesh, view: SheetView, { paper, part }: Scale, [px, py]: Point): FaceAt | undefined {
  const x = ((px - view.origin[0]) * part) / paper;
  const y = ((py - view.origin[1]) * part) / paper;
  const [u, v, w] = [view.across, view.up, view.towards].map(({ axis }) => indexOfAxis(axis)) as [
    number,
    number,
    number,
  ];
  const [su, sv, sw] = [view.across.sign, view.up.sign, view.towards.sign];
  const before = view.cutAt === undefined ? Infinity : sw * view.cutAt;
  let [nearest, found, isBack] = [-Infinity, -1, false];
  const { vertices, triangles } = mesh;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!];
    const [ax, ay, bx, by] = [
      su * vertices[a + u]!,
      sv * vertices[a + v]!,
      su * vertices[b + u]!,
      sv * vertices[b + v]!,
    ];
    const [cx, cy] = [su * vertices[c + u]!, sv * vertices[c + v]!];
    const area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    if (area === 0) continue;
    const p = ((bx - x) * (cy - y) - (by - y) * (cx - x)) / area;
    const q = ((cx - x) * (ay - y) - (cy - y) * (ax - x)) / area;
    if (p < 0 || q < 0 || p + q > 1) continue;
    const z = sw * (p * vertices[a + w]! + q * vertices[b + w]! + (1 - p - q) * vertices[c + w]!);
    if (z <= before && z > nearest) [nearest, found, isBack] = [z, t / 3, area < 0];
  }
  // To see a face from within is to look at the cut through the material before it.
  return found < 0 || isBack ? undefined : { body: mesh.bodies[mesh.bodyOf[found]!]!, face: mesh.faceOf[found]! };
}
