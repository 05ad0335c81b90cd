import { base64Length, fromBase64, toBase64 } from '../base/base64.ts';
import type { Solid } from './solid.ts';

/** A triangle mesh in plain numbers: vertices in mm, three of them per triangle. */
export interface CodedMesh {
  readonly vertices: Float64Array;
  readonly triangles: Uint32Array;
}

/** The mesh as a record of kind `solid` keeps it, whatever the byte order of the machine. */
export function encodeMesh({ vertices, triangles }: CodedMesh): Pick<Solid, 'vertices' | 'triangles'> {
  const places = new DataView(new ArrayBuffer(vertices.length * 8));
  vertices.forEach((value, i) => {
    places.setFloat64(i * 8, value, true);
  });
  const corners = new DataView(new ArrayBuffer(triangles.length * 4));
  triangles.forEach((value, i) => {
    corners.setUint32(i * 4, value, true);
  });
  return { vertices: toBase64(new Uint8Array(places.buffer)), triangles: toBase64(new Uint8Array(corners.buffer)) };
}

/** The mesh of a record for which `meshFault` finds nothing. */
export function decodeMesh(solid: Pick<Solid, 'vertices' | 'triangles'>): CodedMesh {
  const places = new DataView(fromBase64(solid.vertices).buffer);
  const vertices = Float64Array.from({ length: places.byteLength / 8 }, (_, i) => places.getFloat64(i * 8, true));
  const corners = new DataView(fromBase64(solid.triangles).buffer);
  const triangles = Uint32Array.from({ length: corners.byteLength / 4 }, (_, i) => corners.getUint32(i * 4, true));
  return { vertices, triangles };
}

/** @returns what of the coded mesh does not make a mesh: its field, and why, as a clause; undefined when it does. */
export function meshFault(
  solid: Pick<Solid, 'vertices' | 'triangles'>,
): { readonly field: 'vertices' | 'triangles'; readonly what: string } | undefined {
  if (base64Length(solid.vertices) % 24 !== 0) {
    return { field: 'vertices', what: 'its bytes are no whole number of vertices, which take 24 each' };
  }
  if (base64Length(solid.triangles) % 12 !== 0) {
    return { field: 'triangles', what: 'its bytes are no whole number of triangles, which take 12 each' };
  }
  const { vertices, triangles } = decodeMesh(solid);
  const bad = vertices.findIndex((value) => !Number.isFinite(value));
  if (bad >= 0) return { field: 'vertices', what: `vertex ${Math.floor(bad / 3)} lies at no finite place` };
  const count = vertices.length / 3;
  const beyond = triangles.findIndex((corner) => corner >= count);
  if (beyond >= 0) {
    const triangle = Math.floor(beyond / 3);
    return {
      field: 'triangles',
      what: `triangle ${triangle} names vertex ${triangles[beyond]}, and there are ${count}, counted from 0`,
    };
  }
  if (triangles.length < 12) return { field: 'triangles', what: 'fewer than four triangles enclose nothing' };
  return undefined;
}
