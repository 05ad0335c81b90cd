import type { KernelMesh } from '../manifold/kernel.ts';
import type { ExactShape, Move, Vec3 } from '../placed.ts';
import { dot, minus } from '../vectors.ts';
import type { Facet } from './body-mesh.ts';
import { facetIn, roundViewOf, type Source } from './source.ts';

/** One face of one copy of a body, as far as it shows on the part. */
export interface Patch {
  /** Index of the body in the list of the part's bodies. */
  readonly body: number;
  readonly copy: number;
  /** Number of the face within the body, without regard to copies. */
  readonly face: number;
  /**
   * How far the metal may fall short of the flat facets, in mm: 0 for a flat face and for one that bulges out of the metal,
   * whose facets lie within it.
   */
  readonly sagittaMm: number;
  /** Facets `from` up to, not including, `to`. */
  readonly from: number;
  readonly to: number;
  readonly min: Vec3;
  readonly max: Vec3;
  /** The least and the most of each member of its normals. */
  readonly normalMin: Vec3;
  readonly normalMax: Vec3;
}

/** A flat piece of a face, its triangles all in one plane. */
export interface FlatPiece {
  /** Index of its patch. */
  readonly patch: number;
  /** Outwards. */
  readonly normal: Vec3;
  readonly areaMm2: number;
  /** The plane: normal · point. */
  readonly offset: number;
  readonly min: Vec3;
  readonly max: Vec3;
  /** First corner of each triangle in `triangles`, i.e. three times its number. */
  readonly corners: readonly number[];
}

/** The surface of a part, for measuring on it: its triangles gathered into flat pieces, these into faces of bodies. */
export interface Surface {
  readonly vertices: Float32Array;
  readonly triangles: Uint32Array;
  readonly patches: readonly Patch[];
  readonly facets: readonly FlatPiece[];
  /** Per triangle: index of its flat piece; of one without area too. */
  readonly facetOf: Uint32Array;
}

/** What a mesh in the kernel was made from, and which of the part's bodies that is. */
export interface SurfaceSource {
  readonly leaf: Source & { readonly shape: ExactShape; readonly moves: readonly Move[] };
  readonly body: number;
}

/** Pieces with less surface than this are dust of rounding, mm². */
const DUST_MM2 = 1e-6;

interface Gathered {
  readonly corners: number[];
  readonly facet: Facet;
  readonly leaf: SurfaceSource['leaf'];
  readonly copy: number;
  readonly widest: number;
}

export function surfaceOf(mesh: KernelMesh, sourceOf: (source: number) => SurfaceSource): Surface {
  const { vertices, triangles } = mesh;
  const patches: Patch[] = [];
  const facets: FlatPiece[] = [];
  const facetOf = new Uint32Array(triangles.length / 3);
  for (const { faces, body } of gather(mesh, sourceOf)) {
    faces.forEach((pieces, number) => {
      const from = facets.length;
      const box = createBox();
      const normals = createBox();
      let sagittaMm = 0;
      for (const piece of pieces) {
        const facet = flatPiece(vertices, triangles, piece.corners, patches.length);
        if (!facet) continue;
        for (const corner of piece.corners) facetOf[corner / 3] = facets.length;
        facets.push(facet);
        box.add(facet.min);
        box.add(facet.max);
        normals.add(facet.normal);
        sagittaMm = Math.max(sagittaMm, sagittaOf(piece, facet.normal));
      }
      if (facets.length === from) return;
      const count = pieces[0]!.leaf.body.faces;
      patches.push({
        body,
        copy: Math.floor(number / count),
        face: number % count,
        sagittaMm,
        from,
        to: facets.length,
        min: box.min,
        max: box.max,
        normalMin: normals.min,
        normalMax: normals.max,
      });
    });
  }
  return { vertices, triangles, patches, facets, facetOf };
}

interface FacesOfLeaf {
  readonly body: number;
  /** By the number of the face through all copies. */
  readonly faces: Gathered[][];
  /** By the number of the facet. */
  readonly pieces: Gathered[];
}

/** The triangles of each facet of each face of each body that shows. */
function gather(
  { triangles, runs, facetOf }: KernelMesh,
  sourceOf: (source: number) => SurfaceSource,
): Iterable<FacesOfLeaf> {
  const gathered = new Map<SurfaceSource['leaf'], FacesOfLeaf>();
  const put = ({ faces }: FacesOfLeaf, face: number, piece: Gathered): Gathered => {
    const list = faces[face];
    if (list) list.push(piece);
    else faces[face] = [piece];
    return piece;
  };
  for (const run of runs) {
    const { leaf, body } = sourceOf(run.source);
    const found = gathered.get(leaf) ?? { body, faces: [], pieces: [] };
    gathered.set(leaf, found);
    const widest = widestOf(leaf.shape);
    for (let t = run.from; t < run.to && 3 * t < triangles.length; t++) {
      const number = facetOf[t]!;
      let piece = found.pieces[number];
      // The faces of a mesh from outside are not flat, so each of its triangles stands by itself.
      if (!piece || leaf.shape.is === 'mesh') {
        const { facet, face } = facetIn(leaf, number);
        const copy = Math.floor(number / leaf.body.facets.length);
        piece = put(found, face, { corners: [], facet, leaf, copy, widest });
        found.pieces[number] = piece;
      }
      piece.corners.push(3 * t);
    }
  }
  return gathered.values();
}

function sagittaOf({ facet, leaf, copy, widest }: Gathered, normal: Vec3): number {
  const view = roundViewOf(leaf.body, leaf.moves[copy]!, facet);
  if (!view || dot(minus(view.point(1, 0, 0), view.point(0, 0, 0)), normal) > 0) return 0;
  const { slope, radius, cosHalf } = view.round;
  return (slope === 0 ? radius : widest) * (1 - cosHalf);
}

function createBox() {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  return {
    min,
    max,
    add(point: Vec3): void {
      for (let k = 0; k < 3; k++) {
        const value = point[k]!;
        if (value < min[k]!) min[k] = value;
        if (value > max[k]!) max[k] = value;
      }
    },
  };
}

const widestOf = (shape: ExactShape): number =>
  shape.is === 'turned' ? Math.max(...shape.outline.map(({ r }) => r)) : 0;

/** The sum over all its triangles gives the normal: a sliver by itself has none to rely on. */
function flatPiece(
  vertices: Float32Array,
  triangles: Uint32Array,
  corners: readonly number[],
  patch: number,
): FlatPiece | undefined {
  let [x, y, z] = [0, 0, 0];
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const corner of corners) {
    const [a, b, c] = [3 * triangles[corner]!, 3 * triangles[corner + 1]!, 3 * triangles[corner + 2]!];
    const [ex, ey, ez] = [
      vertices[b]! - vertices[a]!,
      vertices[b + 1]! - vertices[a + 1]!,
      vertices[b + 2]! - vertices[a + 2]!,
    ];
    const [fx, fy, fz] = [
      vertices[c]! - vertices[a]!,
      vertices[c + 1]! - vertices[a + 1]!,
      vertices[c + 2]! - vertices[a + 2]!,
    ];
    x += ey * fz - ez * fy;
    y += ez * fx - ex * fz;
    z += ex * fy - ey * fx;
    for (let k = 0; k < 3; k++) {
      const [p, q, r] = [vertices[a + k]!, vertices[b + k]!, vertices[c + k]!];
      min[k] = Math.min(min[k]!, p, q, r);
      max[k] = Math.max(max[k]!, p, q, r);
    }
  }
  const twice = Math.hypot(x, y, z);
  if (twice / 2 < DUST_MM2) return undefined;
  const normal: Vec3 = [x / twice, y / twice, z / twice];
  const first = 3 * triangles[corners[0]!]!;
  const offset = normal[0] * vertices[first]! + normal[1] * vertices[first + 1]! + normal[2] * vertices[first + 2]!;
  return { patch, normal, areaMm2: twice / 2, offset, min, max, corners };
}
