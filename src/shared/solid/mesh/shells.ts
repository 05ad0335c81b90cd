/** A shell that holds less than this share of the largest is dust of rounding, not a piece. */
const DUST = 1e-9;

/** The shells of a closed mesh: sets of triangles that hang together by common corners. */
export interface Shells {
  /** The vertex that stands for the shell of the given vertex. */
  rootOf(vertex: number): number;
  /** Six times the volume of each shell by its root, mm³; negative for one that faces inwards, a hollow. */
  readonly sixVolumes: ReadonlyMap<number, number>;
  /** Roots of the shells that are pieces, neither hollows nor dust, in the order of their first triangle. */
  readonly pieces: readonly number[];
}

/** @param vertices x, y, z of each vertex, mm; @param triangles three vertices each, seen counter-clockwise from outside. */
export function shellsOf(vertices: Float32Array, triangles: Uint32Array): Shells {
  const group = Uint32Array.from({ length: vertices.length / 3 }, (_, i) => i);
  const rootOf = (vertex: number): number => {
    let at = vertex;
    while (group[at] !== at) {
      group[at] = group[group[at]!]!;
      at = group[at]!;
    }
    return at;
  };
  for (let i = 0; i < triangles.length; i += 3) {
    const root = rootOf(triangles[i]!);
    group[rootOf(triangles[i + 1]!)] = root;
    group[rootOf(triangles[i + 2]!)] = root;
  }
  const sixVolumes = new Map<number, number>();
  const origins = new Map<number, number>();
  for (let i = 0; i < triangles.length; i += 3) {
    const root = rootOf(triangles[i]!);
    // Each shell is measured from a corner of its own: far from the origin little would be left of a small one.
    const origin = origins.get(root) ?? triangles[i]!;
    origins.set(root, origin);
    const from = (corner: number, k: number) => vertices[3 * triangles[i + corner]! + k]! - vertices[3 * origin + k]!;
    const [ax, ay, az] = [from(0, 0), from(0, 1), from(0, 2)];
    const [bx, by, bz] = [from(1, 0), from(1, 1), from(1, 2)];
    const [cx, cy, cz] = [from(2, 0), from(2, 1), from(2, 2)];
    const six = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    sixVolumes.set(root, (sixVolumes.get(root) ?? 0) + six);
  }
  const least = DUST * [...sixVolumes.values()].reduce((most, six) => Math.max(most, six), 0);
  return { rootOf, sixVolumes, pieces: [...sixVolumes.keys()].filter((root) => sixVolumes.get(root)! > least) };
}
