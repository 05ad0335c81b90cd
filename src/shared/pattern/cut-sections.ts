import type { Pieces } from '../base/pieces.ts';
import { type Axis, axes } from '../build/station.ts';
import { type FlatBox, type FlatRegion, isOpening, regionArea, regionBox, regionLength } from '../solid/flat-region.ts';
import type { Kernel, KernelSolid } from '../solid/manifold/kernel.ts';
import type { Vec3 } from '../solid/placed.ts';
import type { Layer, Step } from './choose-cuts.ts';
import { pairLoops, type RuledPair, ruledVolume } from './ruled.ts';

/**
 * How a section is cut out of its board with a straight wire:
 * - `straight`: along one template, the wire square to the board;
 * - `ruled`: along two templates, one on each face of the board;
 * - `carved`: along its shadow, and the rest carved to the outlines of its two faces.
 */
export type SectionCut = 'straight' | 'ruled' | 'carved';

/** One piece of foam: what hangs together of the pattern between two cuts. All at the pattern's size, in the part's frame. */
export interface Section {
  /** `2B`: the second layer from below, the second piece of it. */
  readonly name: string;
  /** Layers are numbered from 0 at the low end of the axis. */
  readonly layer: number;
  /** Where it begins and ends along the axis. */
  readonly low: number;
  readonly high: number;
  /** True-size outlines of its lower and its upper face, in the plane across the axis (`planeAcross`). */
  readonly lower: FlatRegion;
  readonly upper: FlatRegion;
  /** The outline that is cut along by a straight or a carved section: all of its shadow. */
  readonly outline: FlatRegion;
  readonly cut: SectionCut;
  /** Points of both templates of a ruled section that the wire stands on at once. */
  readonly pairs: readonly RuledPair[];
  /** The way of the wire's middle: outlines with half the kerf added (openings: taken off). Both ways are one of a straight cut. */
  readonly wire: { readonly lower: FlatRegion; readonly upper: FlatRegion };
  /** Openings within it: the wire must be threaded through each. */
  readonly openings: number;
  /** Length of the cut, mm: the longer of the two templates'. */
  readonly cutMm: number;
  readonly volumeMm3: number;
  /** What the wire leaves; the difference is carved off. */
  readonly wireMm3: number;
  readonly box: FlatBox;
}

export interface SectionsCut {
  readonly sections: readonly Section[];
  /** Of the glue joints between the layers, mm³. */
  readonly glueMm3: number;
}

/** Outlines are taken so far within a section, mm: at its very face a slice is empty, or the next one's. */
const WITHIN_MM = 1e-3;
/** Crumbs of rounding between cuts and faces. */
const CRUMB_MM = 0.02;
const CRUMB_MM3 = 1;
/** Faces that differ by less than this share are one; a volume that differs by less is cut true. */
const STRAIGHT = 0.002;
const RULED = 0.01;

/** Flat faces of a solid across an axis, those within the solid, with their areas. */
export function stepsOf(kernel: Kernel, solid: KernelSolid, axis: Axis): readonly Step[] {
  const { vertices, triangles } = kernel.meshOf(solid);
  const k = axes.indexOf(axis);
  const [i, j] = [(k + 1) % 3, (k + 2) % 3];
  const areas = new Map<number, number>();
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]! * 3, triangles[t + 1]! * 3, triangles[t + 2]! * 3];
    const at = vertices[a + k]!;
    if (Math.abs(vertices[b + k]! - at) > WITHIN_MM || Math.abs(vertices[c + k]! - at) > WITHIN_MM) continue;
    const area =
      (vertices[b + i]! - vertices[a + i]!) * (vertices[c + j]! - vertices[a + j]!) -
      (vertices[b + j]! - vertices[a + j]!) * (vertices[c + i]! - vertices[a + i]!);
    const place = Math.round(at / WITHIN_MM) * WITHIN_MM;
    areas.set(place, (areas.get(place) ?? 0) + Math.abs(area) / 2);
  }
  return [...areas].map(([at, areaMm2]) => ({ at, areaMm2 })).filter(({ areaMm2 }) => areaMm2 >= 1);
}

/** Cuts a solid into the pieces of its layers, one layer at a time. */
export function* cuttingSections(
  kernel: Kernel,
  solid: KernelSolid,
  axis: Axis,
  layers: readonly Layer[],
  kerfMm: number,
): Pieces<SectionsCut> {
  const sections: Section[] = [];
  let glueMm3 = 0;
  for (const [index, layer] of layers.entries()) {
    yield;
    const next = layers[index + 1];
    const joint = next && kernel.between(solid, axis, layer.high, next.low);
    if (joint) {
      glueMm3 += kernel.volumeOf(joint);
      kernel.release(joint);
    }
    // Faces in the very plane of a cut would hang on as films without thickness, and tie pieces together.
    const slab = kernel.between(solid, axis, layer.low + WITHIN_MM, layer.high - WITHIN_MM);
    if (!slab) continue;
    const pieces = kernel.piecesOf(slab);
    kernel.release(slab);
    const found = pieces.flatMap((piece) => sectionOf(kernel, piece, axis, layer, index, kerfMm) ?? []);
    for (const piece of pieces) kernel.release(piece);
    // The same order whatever order the kernel parts them in.
    found.sort((a, b) => a.box.min[0] - b.box.min[0] || a.box.min[1] - b.box.min[1] || a.low - b.low);
    found.forEach((section, n) => {
      sections.push({ ...section, name: `${index + 1}${found.length > 1 ? letters(n) : ''}` });
    });
  }
  return { sections, glueMm3 };
}

/** A, B, … Z, AA, AB, … */
const letters = (n: number): string =>
  (n >= 26 ? letters(Math.floor(n / 26) - 1) : '') + String.fromCharCode(65 + (n % 26));

function sectionOf(
  kernel: Kernel,
  piece: KernelSolid,
  axis: Axis,
  layer: Layer,
  index: number,
  kerfMm: number,
): Omit<Section, 'name'> | undefined {
  const k = axes.indexOf(axis);
  const box: { readonly min: Vec3; readonly max: Vec3 } = kernel.boxOf(piece);
  const [from, to] = [box.min[k]!, box.max[k]!];
  if (to - from < CRUMB_MM || kernel.volumeOf(piece) < CRUMB_MM3) return undefined;
  const lower = kernel.sliceOf(piece, axis, from + WITHIN_MM);
  const upper = kernel.sliceOf(piece, axis, to - WITHIN_MM);
  // What was left off at the cuts belongs to it.
  const low = from - layer.low < 2 * WITHIN_MM ? layer.low : from;
  const high = layer.high - to < 2 * WITHIN_MM ? layer.high : to;
  const heightMm = high - low;
  const volumeMm3 = kernel.volumeOf(piece) + regionArea(lower) * (from - low) + regionArea(upper) * (high - to);
  const shadow = kernel.shadowOf(piece, axis);
  const flat = regionBox(shadow);
  if (!flat) return undefined;
  const { cut, wireMm3, pairs } = wayOf(kernel, { lower, upper, shadow, heightMm, volumeMm3 });
  const ways = cut === 'ruled' ? { lower, upper } : { lower: shadow, upper: shadow };
  const grown = (region: FlatRegion) => kernel.grow(region, kerfMm / 2, 'sharp');
  const wireLower = grown(ways.lower);
  const outline = shadow;
  return {
    layer: index,
    low,
    high,
    lower,
    upper,
    outline,
    cut,
    pairs,
    wire: { lower: wireLower, upper: ways.upper === ways.lower ? wireLower : grown(ways.upper) },
    openings: (cut === 'ruled' ? lower : outline).filter(isOpening).length,
    cutMm: Math.max(regionLength(ways.lower), regionLength(ways.upper)),
    volumeMm3,
    wireMm3,
    box: flat,
  };
}

interface Faces {
  readonly lower: FlatRegion;
  readonly upper: FlatRegion;
  readonly shadow: FlatRegion;
  readonly heightMm: number;
  readonly volumeMm3: number;
}

function wayOf(
  kernel: Kernel,
  { lower, upper, shadow, heightMm, volumeMm3 }: Faces,
): Pick<Section, 'cut' | 'wireMm3' | 'pairs'> {
  const straightMm3 = regionArea(shadow) * heightMm;
  // The shadow holds all of the piece: cut along it, nothing is lost.
  if (straightMm3 - volumeMm3 <= STRAIGHT * volumeMm3) return { cut: 'straight', wireMm3: straightMm3, pairs: [] };
  const pairs = isWithin(kernel, lower, upper) ? pairLoops(lower, upper) : undefined;
  const ruledMm3 = pairs ? ruledVolume(pairs, lower, upper, heightMm) : Infinity;
  if (pairs && Math.abs(ruledMm3 - volumeMm3) <= RULED * volumeMm3) return { cut: 'ruled', wireMm3: ruledMm3, pairs };
  return { cut: 'carved', wireMm3: straightMm3, pairs: [] };
}

/** Faces that have nothing over one another are no ends of one ruled cut. */
const isWithin = (kernel: Kernel, lower: FlatRegion, upper: FlatRegion): boolean =>
  lower.length > 0 && upper.length > 0 && regionArea(kernel.common(lower, upper)) > 0;
