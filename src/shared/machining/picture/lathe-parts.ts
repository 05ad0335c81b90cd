import type { PictureItem } from './picture.ts';
import type { LatheHead, LatheScene, LatheTail, Point } from './scene.ts';
import { area, rect } from './shapes.ts';
import { greatestRadius } from './swept-outline.ts';

/** Half angle of a lathe centre: 60° included (common practice, no source). */
const CENTRE = Math.tan(Math.PI / 6);

/** Sizes for the eye where the machine's own are not known: never measured, never judged. */
export interface Drawn {
  /** Of the work. */
  readonly radius: number;
  readonly headstock: { readonly half: number; readonly length: number };
  readonly spindle: number;
  readonly barrel: number;
  readonly tailstock: { readonly half: number; readonly length: number };
  /** How far the bed is drawn below its top. */
  readonly bedDepth: number;
}

export function drawnSizes(scene: LatheScene): Drawn {
  const radius = Math.max(greatestRadius(scene.swept), 1);
  const high = scene.bed.radius ?? radius * 1.1;
  const barrel = (scene.tail?.barrelDiameter ?? high * 0.34) / 2;
  return {
    radius,
    headstock: { half: high * 0.62, length: high * 0.5 },
    spindle: high * 0.3,
    barrel,
    tailstock: { half: Math.max(high * 0.4, barrel * 1.5), length: high * 0.62 },
    bedDepth: high * 0.34,
  };
}

/** A centre with its point at `tip`, pointing to greater (+1) or smaller places. */
function centre(tip: number, length: number, way: 1 | -1, most: number): readonly Point[] {
  const root = tip - way * length;
  const half = Math.min(most, length * CENTRE);
  const shoulder = tip - (way * half) / CENTRE;
  const points: readonly Point[] = [
    [tip, 0],
    [shoulder, half],
    [root, half],
    [root, -half],
    [shoulder, -half],
  ];
  return points;
}

const known = <T>(value: T | undefined, otherwise: T): T => value ?? otherwise;

/** Face of the nose as drawn: where it stands, or as near as what is known of the holding lets one guess for the eye. */
export function noseOf(scene: LatheScene): number {
  return scene.nose ?? scene.extent[0] - (scene.head.is === 'centre' ? known(scene.head.length, 30) : 0);
}

/** Headstock and what it holds the work with, seen across the line; the same from the front and from above. */
export function headItems(scene: LatheScene, drawn: Drawn): readonly PictureItem[] {
  const nose = noseOf(scene);
  const { half, length } = drawn.headstock;
  const items: PictureItem[] = [
    area('headstock', rect(nose - length - drawn.spindle * 0.4, -half, nose - drawn.spindle * 0.4, half)),
    area('headstock', rect(nose - drawn.spindle * 0.4, -drawn.spindle, nose, drawn.spindle)),
  ];
  items.push(...holdingItems(scene.head, nose, drawn));
  return items;
}

function holdingItems(head: LatheHead, nose: number, drawn: Drawn): readonly PictureItem[] {
  switch (head.is) {
    case 'centre':
      return head.length === undefined
        ? []
        : [area('holding', centre(nose + head.length, head.length, 1, drawn.spindle))];
    case 'plate':
      return head.diameter === undefined
        ? []
        : [area('holding', rect(nose, -head.diameter / 2, nose + Math.max(known(head.face, 0), 1), head.diameter / 2))];
    case 'chuck': {
      if (head.diameter === undefined || head.length === undefined) return [];
      const face = nose + head.length - known(head.depth, head.length / 3);
      const half = head.diameter / 2;
      const jaw = half * 0.34;
      const grip = known(head.grip, half / 2);
      // Jaws that open in a bore stand within it, those that close stand about it.
      const [inner, outer] = head.inside ? [Math.max(0, grip - jaw), grip] : [grip, grip + jaw];
      const end = nose + head.length;
      return [
        area('holding', rect(nose, -half, face, half)),
        area('holding', rect(face, inner, end, outer), rect(face, -inner, end, -outer)),
      ];
    }
  }
}

/** The tailstock: point, barrel as far out as it must be, and the body behind it. */
export function tailItems(tail: LatheTail, drawn: Drawn): readonly PictureItem[] {
  const length = known(tail.centreLength, drawn.barrel * 1.6);
  const out = Math.max(0, known(tail.out, drawn.barrel * 2));
  const root = tail.point + length;
  const body = root + out;
  return [
    area('tailstock', rect(body, -drawn.tailstock.half, body + drawn.tailstock.length, drawn.tailstock.half)),
    ...(out > 0 ? [area('barrel', rect(root, -drawn.barrel, body, drawn.barrel))] : []),
    area('holding', centre(tail.point, length, -1, drawn.barrel * 0.8)),
  ];
}

/** Where the body of the tailstock begins and ends along the bed. */
export function tailReach(tail: LatheTail, drawn: Drawn): readonly [root: number, body: number, end: number] {
  const root = tail.point + known(tail.centreLength, drawn.barrel * 1.6);
  const body = root + Math.max(0, known(tail.out, drawn.barrel * 2));
  return [root, body, body + drawn.tailstock.length];
}
