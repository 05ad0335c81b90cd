import { ok, type Result } from '../../base/result.ts';
import type { CodedMesh } from '../../build/mesh-code.ts';
import type { Vec3 } from '../placed.ts';
import { countEdges, type Edges, edgesOf, endOf, startOf } from './edges.ts';
import { faceAlike, turnedRound } from './face-alike.ts';
import { refuse, type SolidProblem } from './mesh-file.ts';
import { liesWithin, type Shell, shellNumbers, shellsOf } from './shells.ts';
import { compacted, weldExactly, weldNear, withoutDoubles } from './weld.ts';

/** A mesh that encloses a body: closed, its faces looking outwards. */
export interface SoundMesh {
  readonly mesh: CodedMesh;
  /** In the cube of the mesh's own unit. */
  readonly volume: number;
  readonly min: Vec3;
  readonly max: Vec3;
  /** Pieces of surface, cavities among them. */
  readonly shells: number;
  /** What was mended, in sentences. */
  readonly remarks: readonly string[];
}

/**
 * How far apart vertices at the rims of gaps may lie to be joined, in parts of the diagonal of the whole: from the last
 * digit of numbers written with seven figures up to what nobody sees. Common practice, no source.
 */
const REACHES = [1e-7, 1e-6, 1e-5, 1e-4];

/** A part of a machine has one surface and a few cavities; a scan full of specks has thousands. */
const MOST_SHELLS = 100;

/** Below this part of the box's volume a solid is a skin; sheet metal of a tenth of a millimetre lies far above. */
const LEAST_FILLING = 1e-9;

/**
 * Makes a closed body of the triangles of a file: joins equal vertices, takes out triangles without a size and doubles,
 * joins near vertices along gaps, turns triangles that face the wrong way. What then still is open is refused with the
 * place, as only the person who drew it knows what belongs there.
 *
 * @param written puts a place of the mesh in words, for messages
 */
export function mendMesh(raw: CodedMesh, written: (place: Vec3) => string): Result<SoundMesh, SolidProblem> {
  const remarks: string[] = [];
  const closed = close(withoutDoubles(weldExactly(raw)), remarks, written);
  if (!closed.ok) return closed;
  const outward = lookOutwards(closed.value, remarks);
  if (!outward.ok) return outward;
  const { mesh, shells } = outward.value;
  const min = lowestOf(shells.map((shell) => shell.min));
  const max = highestOf(shells.map((shell) => shell.max));
  const volume = shells.reduce((sum, shell) => sum + shell.volume, 0);
  const box = [0, 1, 2].reduce((product, axis) => product * (max[axis]! - min[axis]!), 1);
  if (!(volume > box * LEAST_FILLING)) {
    return refuse('no-volume', '', 'The faces enclose no volume.', 'Give the solid a thickness, and write it again.');
  }
  return ok({ mesh, volume, min, max, shells: shells.length, remarks });
}

const lowestOf = (places: readonly Vec3[]): Vec3 =>
  places.reduce((a, b) => [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.min(a[2], b[2])]);
const highestOf = (places: readonly Vec3[]): Vec3 =>
  places.reduce((a, b) => [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.max(a[2], b[2])]);

function diagonalOf({ vertices }: CodedMesh): number {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  vertices.forEach((value, i) => {
    const axis = i % 3;
    if (value < low[axis]!) low[axis] = value;
    if (value > high[axis]!) high[axis] = value;
  });
  return Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
}

/** @returns the mesh with as many triangles one way as the other at every edge. */
function close(
  welded: CodedMesh,
  remarks: string[],
  written: (place: Vec3) => string,
): Result<CodedMesh, SolidProblem> {
  let mesh = welded;
  if (mesh.triangles.length === 0) {
    return refuse('no-volume', '', 'No triangle has a size.', 'Check the file in the program that it came from.');
  }
  const diagonal = diagonalOf(mesh);
  let edges = edgesOf(mesh);
  let { odd, turned } = countEdges(mesh, edges);
  const openAtFirst = odd;
  const wholeMesh = mesh;
  for (const reach of REACHES) {
    if (odd.length === 0) break;
    mesh = withoutDoubles(weldNear(mesh, rimOf(mesh, odd), reach * diagonal));
    edges = edgesOf(mesh);
    ({ odd, turned } = countEdges(mesh, edges));
    if (odd.length === 0 && mesh.triangles.length > 0) {
      remarks.push(`Gaps along ${openAtFirst.length} edges were closed by joining corners that lay side by side.`);
    }
  }
  if (odd.length > 0 || mesh.triangles.length === 0) return stillOpen(wholeMesh, openAtFirst, written);
  if (turned.length === 0) return ok(mesh);
  const alike = faceAlike(mesh, edges);
  const wrong = alike.ok ? countEdges(alike.value.mesh, edgesOf(alike.value.mesh)).turned[0] : alike.error;
  if (!alike.ok || wrong !== undefined) {
    return refuse(
      'one-sided',
      written(edgePlace(alike.ok ? alike.value.mesh : mesh, wrong ?? 0)),
      'The surface has no inside: its faces cannot all be made to look outwards.',
      'Mend it in the program that it came from: somewhere faces cross or are joined with a twist.',
    );
  }
  const count = alike.value.turned;
  remarks.push(
    count === 1 ? 'One face was turned round.' : `${count} faces that looked the wrong way were turned round.`,
  );
  return ok(alike.value.mesh);
}

function rimOf({ vertices, triangles }: CodedMesh, odd: readonly number[]): Uint8Array {
  const marked = new Uint8Array(vertices.length / 3);
  for (const half of odd) {
    marked[startOf(triangles, half)] = 1;
    marked[endOf(triangles, half)] = 1;
  }
  return marked;
}

function edgePlace({ vertices, triangles }: CodedMesh, half: number): Vec3 {
  const at = (axis: number): number =>
    (vertices[startOf(triangles, half) * 3 + axis]! + vertices[endOf(triangles, half) * 3 + axis]!) / 2;
  return [at(0), at(1), at(2)];
}

function stillOpen(mesh: CodedMesh, odd: readonly number[], written: (place: Vec3) => string) {
  const [first = 0] = odd;
  const edges = odd.length === 1 ? 'one edge' : `${odd.length} edges`;
  return refuse(
    'open',
    written(edgePlace(mesh, first)),
    `The surface is not closed: along ${edges} a face is missing or one is too many, the first of them here.`,
    'Close it in the program that it came from, and write it as one solid.',
  );
}

/** Turns shells so that bodies look outwards and cavities inwards, and leaves out those that add nothing. */
function lookOutwards(
  mesh: CodedMesh,
  remarks: string[],
): Result<{ readonly mesh: CodedMesh; readonly shells: readonly Shell[] }, SolidProblem> {
  const edges: Edges = edgesOf(mesh);
  const numbers = shellNumbers(mesh, edges);
  if (numbers.count > MOST_SHELLS) {
    return refuse(
      'many-shells',
      '',
      `The file holds ${numbers.count} separate closed surfaces, and up to ${MOST_SHELLS} are taken.`,
      'Write the one part that is wanted, without specks and without the rest of an assembly.',
    );
  }
  const shells = shellsOf(mesh, numbers);
  const { wrong: wrongOnes, idle: idleOnes } = sortOut(mesh, shells);
  const isWrong = (shell: number): boolean => wrongOnes.has(shell);
  const isIdle = (shell: number): boolean => idleOnes.has(shell);
  const wrong = wrongOnes.size;
  const idle = idleOnes.size;
  if (wrong > 0) remarks.push('Faces that looked inwards were turned outwards.');
  if (idle > 0) {
    remarks.push(
      `${idle === 1 ? 'A body' : `${idle} bodies`} wholly inside another added nothing and ${idle === 1 ? 'was' : 'were'} left out. If a cavity was meant, its faces must look inwards.`,
    );
  }
  if (wrong === 0 && idle === 0) return ok({ mesh, shells });
  const triangles = turnedRound(mesh.triangles, (triangle) => isWrong(numbers.of[triangle]!));
  const kept = shells
    .map((shell, i) => (isWrong(i) ? { ...shell, volume: -shell.volume } : shell))
    .filter((_, i) => !isIdle(i));
  const left = triangles.filter((_, i) => !isIdle(numbers.of[Math.floor(i / 3)]!));
  return ok({ mesh: compacted(mesh.vertices, left), shells: kept });
}

/**
 * Goes through the shells from the outside inwards. In the open, one that looks inwards is a body drawn wrong; within
 * material, one that looks inwards is a cavity, and one that looks outwards is a body that adds nothing.
 */
function sortOut(
  mesh: CodedMesh,
  shells: readonly Shell[],
): { readonly wrong: ReadonlySet<number>; readonly idle: ReadonlySet<number> } {
  const outersOf = shells.map((shell) => shells.flatMap((outer, i) => (liesWithin(mesh, shell, outer) ? [i] : [])));
  const order = shells.map((_, i) => i).toSorted((a, b) => outersOf[a]!.length - outersOf[b]!.length);
  const wrong = new Set<number>();
  const idle = new Set<number>();
  const adds = (shell: number): boolean => shells[shell]!.volume >= 0 || wrong.has(shell);
  for (const shell of order) {
    const layers = outersOf[shell]!.filter((outer) => !idle.has(outer));
    const inMaterial = layers.reduce((sum, outer) => sum + (adds(outer) ? 1 : -1), 0) > 0;
    if (inMaterial && shells[shell]!.volume >= 0) idle.add(shell);
    else if (!inMaterial && shells[shell]!.volume < 0) wrong.add(shell);
  }
  return { wrong, idle };
}
