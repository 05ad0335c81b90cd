import type { BodyId } from '../../base/ids.ts';
import type { Vec3 } from '../../solid/placed.ts';
import type { CastingSolid } from '../casting-solid.ts';
import type { BodySection } from '../sections.ts';
import type { CutSurface } from './cut-into-cells.ts';
import type { MetalCells } from './metal-cells.ts';
import type { ZonesOfCells } from './zones.ts';

/** A body has a part in a zone when this share of the zone's surface is its own. */
const LEAST_SHARE = 0.03;

export interface BodySectionsInput {
  readonly solid: CastingSolid;
  readonly cut: CutSurface;
  readonly metal: MetalCells;
  readonly moduli: Float64Array;
  readonly zones: ZonesOfCells;
}

/** What lies under the surface of each body, and which bodies lie on each zone. */
export function bodySections({ solid: { mesh }, cut, metal, moduli, zones }: BodySectionsInput): {
  readonly bodies: readonly BodySection[];
  bodiesOf(zone: number): readonly BodyId[];
} {
  const pieces: number[][] = mesh.bodies.map(() => []);
  const onZone = zones.zones.map(() => new Float64Array(mesh.bodies.length));
  for (let i = 0; i < cut.pieces; i++) {
    const cell = metal.numberOf[cut.cellOf[i]!]!;
    if (cell < 0) continue;
    const body = mesh.bodyOf[cut.triangleOf[i]!]!;
    pieces[body]!.push(i);
    onZone[zones.of[cell]!]![body]! += cut.areaOf[i]!;
  }
  const moduliAt = (piece: number): number => moduli[metal.numberOf[cut.cellOf[piece]!]!]!;
  const bodies = mesh.bodies.flatMap((body, index) => {
    const own = pieces[index]!;
    if (own.length === 0) return [];
    own.sort((a, b) => moduliAt(a) - moduliAt(b));
    const areaMm2 = own.reduce((sum, piece) => sum + cut.areaOf[piece]!, 0);
    const under = (share: number): number => {
      let sum = 0;
      for (const piece of own) {
        sum += cut.areaOf[piece]!;
        if (sum >= share * areaMm2) return moduliAt(piece);
      }
      return moduliAt(own.at(-1)!);
    };
    const section: BodySection = {
      body,
      thinMm: under(0.1),
      usualMm: under(0.5),
      thickMm: under(0.9),
      areaMm2,
      centre: centreOf(cut, own, areaMm2),
    };
    return [section];
  });
  return {
    bodies: bodies.sort((a, b) => a.usualMm - b.usualMm),
    bodiesOf(zone) {
      const areas = onZone[zone]!;
      const all = areas.reduce((sum, area) => sum + area, 0);
      return mesh.bodies
        .map((body, i) => ({ body, area: areas[i]! }))
        .filter(({ area }) => area > LEAST_SHARE * all)
        .sort((a, b) => b.area - a.area)
        .map(({ body }) => body);
    },
  };
}

/** The middle of pieces of surface, to about a cell. */
function centreOf({ grid, cellOf, areaOf }: CutSurface, pieces: readonly number[], areaMm2: number): Vec3 {
  const { counts, origin, cellMm } = grid;
  const sums = [0, 0, 0];
  for (const piece of pieces) {
    const place = cellOf[piece]!;
    const at = [
      place % counts[0],
      Math.floor(place / counts[0]) % counts[1],
      Math.floor(place / (counts[0] * counts[1])),
    ];
    for (let k = 0; k < 3; k++) sums[k]! += areaOf[piece]! * at[k]!;
  }
  return sums.map((sum, k) => origin[k]! + (sum / areaMm2 + 0.5) * cellMm) as unknown as Vec3;
}
