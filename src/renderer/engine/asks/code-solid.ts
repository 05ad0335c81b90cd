import { encodeMesh } from '../../../shared/build/mesh-code.ts';
import type { MeshUnit, Solid } from '../../../shared/build/solid.ts';
import { inMm } from '../../../shared/solid/formats/in-mm.ts';
import type { Ask } from '../view.ts';

/** A mesh as a record keeps it, in mm; off the screen's thread, as large ones take their time. */
export const codeSolidAsk: Ask<
  { readonly vertices: Float64Array; readonly triangles: Uint32Array; readonly unit: MeshUnit },
  Pick<Solid, 'vertices' | 'triangles'>
> = (_scene, { vertices, triangles, unit }) => encodeMesh(inMm({ vertices, triangles }, unit));
