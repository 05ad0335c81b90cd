import type { CodedMesh } from '../../build/mesh-code.ts';
import type { MeshUnit } from '../../build/solid.ts';
import { mmPer } from './unit-doubt.ts';

/** The mesh in millimetres, its numbers taken as the unit says. */
export function inMm({ vertices, triangles }: CodedMesh, unit: MeshUnit): CodedMesh {
  const factor = mmPer[unit];
  return { vertices: factor === 1 ? vertices : vertices.map((value) => value * factor), triangles };
}
