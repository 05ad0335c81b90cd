import { meshOfShape } from '../../solid/mesh/mesh-of-shape.ts';
import { STAY } from '../../solid/moves.ts';
import { grownShape } from './grown-shape.ts';
import { type Silhouette, type ViewPoint, withoutHidden } from './hidden-ways.ts';
import { poseOf } from './pose.ts';
import type { SweepLine, SweepPiece } from './sweep-piece.ts';

/** Seen square to the line: p along it from the datum, q on the first or the second axis across, from the line. */
export const sideOutline = (piece: SweepPiece, copy: number, line: SweepLine, up: 'first' | 'second'): Silhouette =>
  silhouette(meshOfPiece(piece, copy, line), 0, up === 'first' ? 1 : 2);

/** Seen along the line: p on the first axis across, q on the second, from the line. */
export const endOutline = (piece: SweepPiece, copy: number, line: SweepLine): Silhouette =>
  silhouette(meshOfPiece(piece, copy, line), 1, 2);

/** The same two views of a mesh in the first part's frame, for instance of a finished solid. */
export const sideOutlineOfMesh = (mesh: ViewedMesh, line: SweepLine, up: 'first' | 'second'): Silhouette =>
  silhouette(seenFrom(mesh, line), 0, up === 'first' ? 1 : 2);

export const endOutlineOfMesh = (mesh: ViewedMesh, line: SweepLine): Silhouette =>
  silhouette(seenFrom(mesh, line), 1, 2);

export interface ViewedMesh {
  readonly vertices: Float64Array | Float32Array;
  readonly triangles: Uint32Array;
}

function seenFrom({ vertices, triangles }: ViewedMesh, line: SweepLine): ViewedMesh {
  const mesh = { is: 'mesh', vertices: Float64Array.from(vertices), triangles } as const;
  return placedBy(mesh.vertices, triangles, poseOf(mesh, STAY, line));
}

/** Round surfaces by facets whose corners lie on them; stock on a mesh is left out. */
function meshOfPiece({ shape, moves, grow }: SweepPiece, copy: number, line: SweepLine): ViewedMesh {
  const { vertices, triangles } = meshOfShape(grownShape(shape, grow)).mesh;
  const asMesh = { is: 'mesh', vertices, triangles } as const;
  return placedBy(vertices, triangles, poseOf(asMesh, moves[copy]!, line));
}

function placedBy(vertices: Float64Array, triangles: Uint32Array, pose: ReturnType<typeof poseOf>): ViewedMesh {
  const placed = new Float64Array(vertices.length);
  for (let i = 0; i < vertices.length; i += 3) {
    const [u, v, a] = [vertices[i]!, vertices[i + 1]!, vertices[i + 2]!];
    placed[i] = pose.ox + pose.ux * u + pose.vx * v + pose.ax * a;
    placed[i + 1] = pose.oy + pose.uy * u + pose.vy * v + pose.ay * a;
    placed[i + 2] = pose.oz + pose.uz * u + pose.vz * v + pose.az * a;
  }
  return { vertices: placed, triangles };
}

/**
 * The border of all triangles that look towards the viewer: each edge that two of them share cancels out, and what is left runs in closed
 * ways. Round any point they wind as often as such triangles cover it, so that filling them by the non-zero rule covers the silhouette.
 */
function silhouette({ vertices, triangles }: ViewedMesh, p: 0 | 1, q: 1 | 2): Silhouette {
  const count = vertices.length / 3;
  const onward = new Map<number, number[]>();
  const borders = new Map<number, number>();
  for (let t = 0; t < triangles.length; t += 3) {
    const corners = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!] as const;
    const [a, b, c] = corners.map((i) => ({ p: vertices[3 * i + p]!, q: vertices[3 * i + q]! })) as [
      ViewPoint,
      ViewPoint,
      ViewPoint,
    ];
    if ((b.p - a.p) * (c.q - a.q) - (b.q - a.q) * (c.p - a.p) <= 0) continue;
    for (let k = 0; k < 3; k++) {
      const [from, to] = [corners[k]!, corners[(k + 1) % 3]!];
      const back = to * count + from;
      const there = borders.get(back) ?? 0;
      if (there > 1) borders.set(back, there - 1);
      else if (there === 1) borders.delete(back);
      else borders.set(from * count + to, (borders.get(from * count + to) ?? 0) + 1);
    }
  }
  for (const [edge, times] of borders) {
    const from = Math.floor(edge / count);
    const list = onward.get(from) ?? [];
    for (let k = 0; k < times; k++) list.push(edge % count);
    onward.set(from, list);
  }
  const ways = waysFrom(onward).flatMap((way) =>
    straightened(way.map((i) => ({ p: vertices[3 * i + p]!, q: vertices[3 * i + q]! }))),
  );
  return withoutHidden(ways);
}

/** As many edges leave every vertex as come to it: following them always leads back. */
function waysFrom(onward: Map<number, number[]>): readonly (readonly number[])[] {
  const ways: number[][] = [];
  for (const first of onward.keys()) {
    while ((onward.get(first)?.length ?? 0) > 0) {
      const way: number[] = [];
      for (let at = first; ; ) {
        const next = onward.get(at)?.pop();
        if (next === undefined) break;
        way.push(at);
        at = next;
      }
      ways.push(way);
    }
  }
  return ways;
}

/** Without corners where the way runs straight on; nothing of what covers no area. */
function straightened(way: readonly ViewPoint[]): readonly (readonly ViewPoint[])[] {
  const points: ViewPoint[] = [];
  for (const point of way)
    if (!points.some((_, i) => i === points.length - 1 && near(points[i]!, point))) points.push(point);
  while (points.length > 1 && near(points[0]!, points.at(-1)!)) points.pop();
  const kept = points.filter((point, i) => {
    const before = points[(i + points.length - 1) % points.length]!;
    const after = points[(i + 1) % points.length]!;
    const twice = (point.p - before.p) * (after.q - before.q) - (point.q - before.q) * (after.p - before.p);
    const length = Math.hypot(after.p - before.p, after.q - before.q);
    const onward = (point.p - before.p) * (after.p - point.p) + (point.q - before.q) * (after.q - point.q);
    return !(onward > 0 && Math.abs(twice) <= SAME * length);
  });
  return kept.length < 3 ? [] : [kept];
}

const SAME = 1e-6;
const near = (a: ViewPoint, b: ViewPoint): boolean => Math.abs(a.p - b.p) <= SAME && Math.abs(a.q - b.q) <= SAME;
