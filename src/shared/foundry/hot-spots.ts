import type { Pieces } from '../base/pieces.ts';
import type { Vec3 } from '../solid/placed.ts';
import type { CastingSolid } from './casting-solid.ts';
import { bodySections } from './sections/body-sections.ts';
import { type CellGrid, gridFor } from './sections/cell-grid.ts';
import { cutIntoCells } from './sections/cut-into-cells.ts';
import { depthsOf, type Middles, middlesOf } from './sections/depths.ts';
import { surfacePerVolume } from './sections/local-moduli.ts';
import { type MetalCells, metalCells } from './sections/metal-cells.ts';
import { type PaintedMesh, paintMesh } from './sections/painted-mesh.ts';
import { shadowsOf } from './sections/shadows.ts';
import { thicknesses } from './sections/thickness.ts';
import { thinnestWall } from './sections/thinnest.ts';
import { zonesOf } from './sections/zones.ts';
import type { SectionField, Sections } from './sections.ts';

/**
 * What a section's surface per volume reads in its very middle is less than its mean, for the surface is spread over a reach of
 * one radius only: by 1/1.18 in a plate, 1.13 in a bar and 1.10 in a sphere (x/sinh x and its like at x = 1), more by what the
 * cells blur. This one correction serves all three within 5 %.
 */
const IN_THE_MIDDLE = 0.16;

/**
 * Local moduli of a casting, the places that freeze last, and the necks between them.
 *
 * The metal is cut into cubes, volume and surface of each exact. In each the surface is spread over the metal within about the
 * radius of the largest ball that the metal holds there, through metal only, as heat evens out in a section before the sand has
 * taken it; volume by surface of what is in reach is the local modulus. It is V/A where a section is alike, and more where webs
 * meet. Not a simulation: for comparing sections, for the order in which they freeze, and for risers by the modulus rule.
 *
 * @param cells cubes of metal to aim at; fewer are quicker and coarser
 */
export function* sectionsOf(solid: CastingSolid, cells?: number): Pieces<SectionField> {
  const grid = gridFor(solid.box, solid.volumeMm3, cells);
  const cut = yield* cutIntoCells(solid, grid);
  const metal = metalCells(cut);
  yield;
  const depths = depthsOf(metal);
  yield;
  const middles = yield* middlesOf(metal, depths);
  yield;
  const moduli = yield* moduliOf(metal, middles);
  const zones = yield* zonesOf(metal, moduli);
  yield;
  const walls = yield* thicknesses(solid, cut);
  const modulusAt = (x: number, y: number, z: number): number => moduli[nearestCell(metal, x, y, z)] ?? 0;
  const thinnest = thinnestWall(walls, modulusAt);
  const { bodies, bodiesOf } = bodySections({ solid, cut, metal, moduli, zones });
  const volumes = new Float64Array(zones.zones.length);
  const areas = new Float64Array(zones.zones.length);
  for (let cell = 0; cell < metal.count; cell++) {
    volumes[zones.of[cell]!]! += metal.volumeOf[cell]!;
    areas[zones.of[cell]!]! += metal.areaOf[cell]!;
  }
  const neckOf = (zone: number): number | undefined => {
    const ways = zones.necks.filter(({ zones: [a] }) => a === zone).map(({ modulus }) => modulus);
    return ways.length > 0 ? Math.max(...ways) : undefined;
  };
  yield;
  const sections: Sections = {
    cellMm: grid.cellMm,
    bodies,
    zones: zones.zones.map(({ peak, modulus }, zone) => ({
      modulusMm: modulus,
      radiusMm: middles.radii[peak]!,
      at: middleOf(grid, metal.placeOf[middles.of[peak]!]!),
      volumeMm3: volumes[zone]!,
      areaMm2: areas[zone]!,
      bodies: bodiesOf(zone),
      neckMm: neckOf(zone),
    })),
    necks: zones.necks.map(({ zones: ends, cell, modulus }) => ({
      zones: ends,
      modulusMm: modulus,
      at: middleOf(grid, metal.placeOf[cell]!),
    })),
    thinnest: thinnest && {
      thicknessMm: thinnest.thicknessMm,
      modulusMm: thinnest.modulusMm,
      at: thinnest.at.at,
      body: solid.mesh.bodies[solid.mesh.bodyOf[thinnest.at.triangle]!]!,
    },
    shadows: shadowsOf(cut),
  };
  return { sections, modulusAt };
}

/** The surface of a casting, fine enough to be coloured by its moduli. */
export const paintSections = ({ mesh }: CastingSolid, { sections, modulusAt }: SectionField): PaintedMesh =>
  paintMesh(mesh, 4 * sections.cellMm, modulusAt);

/** Each cell has the modulus that is read in the middle of the metal over it. */
function* moduliOf(metal: MetalCells, { of, radii }: Middles): Pieces<Float64Array> {
  const { count, grid } = metal;
  const reaches = new Float32Array(count);
  for (let cell = 0; cell < count; cell++) reaches[cell] = Math.max(radii[cell]!, grid.cellMm);
  const spread = yield* surfacePerVolume(metal, reaches);
  const moduli = new Float64Array(count);
  for (let cell = 0; cell < count; cell++) {
    const middle = of[cell]!;
    moduli[cell] = 1 / spread[middle]! / (1 + IN_THE_MIDDLE * (radii[middle]! / reaches[middle]!) ** 2);
  }
  return moduli;
}

function middleOf({ counts: [nx, ny], origin, cellMm }: CellGrid, place: number): Vec3 {
  const cell = [place % nx, Math.floor(place / nx) % ny, Math.floor(place / (nx * ny))];
  return cell.map((part, k) => origin[k]! + (part + 0.5) * cellMm) as unknown as Vec3;
}

/** The fullest cell at a place or beside it; −1 in the open. */
function nearestCell({ grid, numberOf, volumeOf }: MetalCells, x: number, y: number, z: number): number {
  const { counts, origin, cellMm } = grid;
  const cell = [x, y, z].map((value, k) => Math.floor((value - origin[k]!) / cellMm));
  let best = -1;
  let fullest = 0;
  for (let k = -1; k <= 1; k++) {
    for (let j = -1; j <= 1; j++) {
      for (let i = -1; i <= 1; i++) {
        const [a, b, c] = [cell[0]! + i, cell[1]! + j, cell[2]! + k];
        if (a < 0 || b < 0 || c < 0 || a >= counts[0] || b >= counts[1] || c >= counts[2]) continue;
        const number = numberOf[a + counts[0] * (b + counts[1] * c)]!;
        if (number < 0) continue;
        const near = volumeOf[number]! * (i === 0 && j === 0 && k === 0 ? 4 : 1);
        if (near > fullest) [best, fullest] = [number, near];
      }
    }
  }
  return best;
}
