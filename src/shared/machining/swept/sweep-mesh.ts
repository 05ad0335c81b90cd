import { STAY } from '../../solid/moves.ts';
import type { Piece, SweptProfile } from '../setup-check.ts';
import { meshReach } from './mesh-reach.ts';
import { poseOf } from './pose.ts';
import { clear, nothingFound } from './reach.ts';
import type { SweepLine } from './sweep-piece.ts';
import { emptyProfile, profileOf, type SweepOptions } from './sweep-pieces.ts';
import type { Cell } from './sweeper.ts';

/** A closed mesh in the first part's frame. */
export interface SweptMesh {
  readonly vertices: Float64Array | Float32Array;
  readonly triangles: Uint32Array;
}

/**
 * The greatest radius of a mesh swept about the line, with the deviation of the real surface from it added on all sides: `most` is
 * never less than the truth of a solid no point of which lies farther than that from the mesh's solid. `by` is −1 throughout.
 *
 * @param deviationMm of meshes of the kernel see {@link deviationOf}; 0 = the mesh itself is the truth
 */
export function sweepMesh(
  mesh: SweptMesh,
  line: SweepLine,
  deviationMm: number,
  options: SweepOptions = {},
): SweptProfile {
  if (mesh.triangles.length === 0) return emptyProfile(line.axis);
  const shape = { is: 'mesh', vertices: Float64Array.from(mesh.vertices), triangles: mesh.triangles } as const;
  const reach = meshReach(shape, poseOf(shape, STAY, line), deviationMm);
  const found = nothingFound();
  const nobody: Piece = { is: 'fixture', index: -1 };
  const profile = profileOf(
    {
      line,
      copies: [{ piece: nobody, index: -1, copy: 0, reach, greatest: Infinity }],
      extent: [reach.lo, reach.hi],
      lookWithin(from: number, to: number, cell: Cell) {
        clear(found, -1);
        reach.within(from, to, found);
        cell.by = found.most < 0 ? -1 : 0;
        cell.most = Math.max(0, found.most);
        cell.least = Math.max(0, found.least - deviationMm);
        cell.even = Math.max(0, found.even);
      },
      rivalsIn: () => [],
    },
    options,
  );
  return { ...profile, by: profile.by.fill(-1), pieces: [] };
}

/**
 * How far the real surface of a part may lie outside the fine mesh of the kernel, mm: the sagitta of its facets
 * (`solid/mesh/segments.ts`: 0.05 mm, or that of 256 facets to the turn where it is more), and 24 bits of rounding.
 *
 * @param radiusMm the greatest radius of any round surface of the part, or the size of the part
 */
export const deviationOf = (radiusMm: number): number =>
  Math.max(0.05, radiusMm * (1 - Math.cos(Math.PI / 256))) + Math.max(radiusMm, 1) * 2 ** -22;
