import { type Axis, axes } from '../build/station.ts';
import type { Surface } from './mesh/surface.ts';
import { SAME_MM } from './outline.ts';
import type { FlatFace } from './solids.ts';

/** Corners of the mesh are rounded to 24 bits: faces nearer than this share of their place are one face. */
const ROUNDING = 2e-7;

/** The flat faces of a part across its axes, those in one plane taken together, largest first. */
export function flatFaces({ facets, patches }: Surface): readonly FlatFace[] {
  const found: { axis: Axis; looks: 1 | -1; atMm: number; areaMm2: number }[] = [];
  for (const { from, to } of patches) {
    // Round faces have flat pieces that are none.
    if (to - from !== 1) continue;
    const { normal, min, areaMm2 } = facets[from]!;
    const k = normal.findIndex((member) => Math.abs(member) > 1 - 1e-9);
    if (k < 0) continue;
    const axis = axes[k]!;
    const looks = normal[k]! > 0 ? 1 : -1;
    const atMm = min[k]!;
    const same = found.find(
      (face) =>
        face.axis === axis &&
        face.looks === looks &&
        Math.abs(face.atMm - atMm) <= SAME_MM + ROUNDING * Math.max(Math.abs(atMm), Math.abs(face.atMm)),
    );
    if (same) same.areaMm2 += areaMm2;
    else found.push({ axis, looks, atMm, areaMm2 });
  }
  return found.sort((a, b) => b.areaMm2 - a.areaMm2 || a.atMm - b.atMm);
}
