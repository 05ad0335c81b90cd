import { unreachable } from '../base/assert.ts';
import { outlineArea, outlineLength } from './outline.ts';
import type { ExactShape, Extrusion, MeshShape, Turned } from './placed.ts';

/**
 * The volume of a shape in mm³, by formula and not by facets. Drawn-out outlines: Green's theorem, with a circular segment
 * for each arc. Turned ones: Pappus's second theorem (the area times the way of its centroid), summed over the outline.
 */
export function exactVolume(shape: ExactShape): number {
  switch (shape.is) {
    case 'extrusion':
      return outlineArea(shape.outline) * (shape.a1 - shape.a0);
    case 'turned':
      return turnedVolume(shape);
    case 'mesh':
      return meshVolume(shape);
    default:
      return unreachable(shape);
  }
}

/** The surface of a shape in mm². Turned ones: Pappus's first theorem (length times the way of its centroid). */
export function exactSurface(shape: ExactShape): number {
  switch (shape.is) {
    case 'extrusion':
      return extrusionSurface(shape);
    case 'turned':
      return turnedSurface(shape);
    case 'mesh':
      return meshSurface(shape);
    default:
      return unreachable(shape);
  }
}

const extrusionSurface = ({ outline, a0, a1 }: Extrusion): number =>
  2 * outlineArea(outline) + outlineLength(outline) * (a1 - a0);

/** 2π ∬ r dr da over the outline; the double integral is Σ (aᵢ rᵢ₊₁ − aᵢ₊₁ rᵢ)(rᵢ + rᵢ₊₁) / 6. */
function turnedVolume({ outline }: Turned): number {
  const origin = outline[0]?.a ?? 0;
  let six = 0;
  outline.forEach((point, i) => {
    const next = outline[(i + 1) % outline.length]!;
    six += ((point.a - origin) * next.r - (next.a - origin) * point.r) * (point.r + next.r);
  });
  return (Math.PI * six) / 3;
}

const turnedSurface = ({ outline }: Turned): number =>
  outline.reduce((sum, point, i) => {
    const next = outline[(i + 1) % outline.length]!;
    return sum + Math.PI * (point.r + next.r) * Math.hypot(next.a - point.a, next.r - point.r);
  }, 0);

/** Six times the signed volume of the tetrahedra from one vertex, summed with Neumaier's compensation. */
function meshVolume({ vertices, triangles }: MeshShape): number {
  const [ox = 0, oy = 0, oz = 0] = vertices;
  let sum = 0;
  let lost = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]! * 3, triangles[t + 1]! * 3, triangles[t + 2]! * 3];
    const ax = vertices[a]! - ox;
    const ay = vertices[a + 1]! - oy;
    const az = vertices[a + 2]! - oz;
    const bx = vertices[b]! - ox;
    const by = vertices[b + 1]! - oy;
    const bz = vertices[b + 2]! - oz;
    const cx = vertices[c]! - ox;
    const cy = vertices[c + 1]! - oy;
    const cz = vertices[c + 2]! - oz;
    const six = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    const next = sum + six;
    lost += Math.abs(sum) >= Math.abs(six) ? sum - next + six : six - next + sum;
    sum = next;
  }
  return (sum + lost) / 6;
}

function meshSurface({ vertices, triangles }: MeshShape): number {
  let sum = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]! * 3, triangles[t + 1]! * 3, triangles[t + 2]! * 3];
    const ux = vertices[b]! - vertices[a]!;
    const uy = vertices[b + 1]! - vertices[a + 1]!;
    const uz = vertices[b + 2]! - vertices[a + 2]!;
    const vx = vertices[c]! - vertices[a]!;
    const vy = vertices[c + 1]! - vertices[a + 1]!;
    const vz = vertices[c + 2]! - vertices[a + 2]!;
    sum += Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
  }
  return sum / 2;
}
