import type { PartId } from '../../../shared/base/ids.ts';
import type { PartMesh, PartState, PlacedBody } from '../../../shared/solid/placed.ts';
import type { Solids } from '../../../shared/solid/solids.ts';

export type MeshOf = Solids['meshOf'];

/** Meshes of parts on show: the very same object until a body changes, so that what is drawn from it can be kept too. */
export function createMeshKeeper(solids: Solids): MeshOf {
  const kept = new WeakMap<readonly PlacedBody[], Map<PartState, PartMesh>>();
  return (part: PartId, state: PartState) => {
    const solid = solids.solidOf(part);
    if (solid === undefined) return undefined;
    // Where nothing is machined the two states are one.
    const asked = solid.asCast === solid.finished ? 'finished' : state;
    const bodies = solids.bodiesOf(part);
    const meshes = kept.get(bodies) ?? new Map<PartState, PartMesh>();
    kept.set(bodies, meshes);
    const mesh = meshes.get(asked) ?? solids.meshOf(part, asked);
    if (mesh !== undefined) meshes.set(asked, mesh);
    return mesh;
  };
}
