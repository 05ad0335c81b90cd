import type { PartId } from '../base/ids.ts';
import type { Bounds } from '../solid/bounds.ts';
import type { PartMesh } from '../solid/placed.ts';
import type { Solids } from '../solid/solids.ts';

/** What the mould is filled with, as the foundry sees it: mm, mm², mm³. */
export interface CastingSolid {
  readonly volumeMm3: number;
  readonly areaMm2: number;
  /** Closed; says of each triangle which body it lies on. */
  readonly mesh: Pick<PartMesh, 'vertices' | 'triangles' | 'bodyOf' | 'bodies'>;
  readonly box: Bounds;
}

/**
 * The part as it comes from the mould by its drawing alone: without stock, draft, prints and lugs.
 *
 * @returns undefined while its solid is not worked out, and where nothing is left of it
 */
export function drawnCasting(part: PartId, solids: Pick<Solids, 'solidOf' | 'meshOf'>): CastingSolid | undefined {
  const figures = solids.solidOf(part)?.asCast;
  const mesh = figures && solids.meshOf(part, 'as cast');
  if (!mesh) return undefined;
  const { volumeMm3, areaMm2, boxMin, boxMax } = figures;
  return { volumeMm3, areaMm2, mesh, box: { min: boxMin, max: boxMax } };
}
