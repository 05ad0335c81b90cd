import { unreachable } from '../../base/assert.ts';
import type { ClosedMesh } from '../manifold/kernel.ts';
import { handOf, moved } from '../moves.ts';
import type { ExactShape, Move } from '../placed.ts';
import type { BodyMesh } from './body-mesh.ts';
import { extrusionMesh } from './extrusion-mesh.ts';
import type { Fineness } from './segments.ts';
import { importedMesh } from './smooth-faces.ts';
import { turnedMesh } from './turned-mesh.ts';

/** The closed mesh of a body's exact shape: corners on the true surface, so that it never reaches outside a solid round body. */
export function meshOfShape(shape: ExactShape, fineness: Fineness = 'fine'): BodyMesh {
  switch (shape.is) {
    case 'extrusion':
      return extrusionMesh(shape, fineness);
    case 'turned':
      return turnedMesh(shape, fineness);
    case 'mesh':
      return importedMesh(shape);
    default:
      return unreachable(shape);
  }
}

/** A mesh after a move, float64 throughout; a mirror image keeps its outside outside. */
export function movedMesh(mesh: ClosedMesh, move: Move): ClosedMesh {
  const vertices = new Float64Array(mesh.vertices.length);
  for (let i = 0; i < vertices.length; i += 3) {
    vertices.set(moved(move, [mesh.vertices[i]!, mesh.vertices[i + 1]!, mesh.vertices[i + 2]!]), i);
  }
  if (handOf(move) === 1) return { ...mesh, vertices };
  const triangles = Uint32Array.from(mesh.triangles);
  for (let i = 0; i < triangles.length; i += 3) {
    triangles[i + 1] = mesh.triangles[i + 2]!;
    triangles[i + 2] = mesh.triangles[i + 1]!;
  }
  return { ...mesh, vertices, triangles };
}
