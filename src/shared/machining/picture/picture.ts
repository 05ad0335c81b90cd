import type { VerdictKind, VerdictState } from '../setup-check.ts';
import type { Point } from './scene.ts';

/** What a mark of a picture stands for; it decides the pen. */
export type PictureRole =
  | 'bed'
  | 'headstock'
  | 'holding'
  | 'tailstock'
  | 'barrel'
  | 'saddle'
  | 'cross-slide'
  | 'tool-block'
  | 'tool'
  | 'steady'
  | 'table'
  | 'column'
  | 'spindle'
  | 'vise'
  | 'swept'
  | 'unsure'
  | 'work'
  | 'collision'
  | 'axis'
  | 'limit'
  | 'cut';

export type PictureItem =
  /** Filled; several loops are one area. */
  | { readonly is: 'area'; readonly role: PictureRole; readonly loops: readonly (readonly Point[])[] }
  | { readonly is: 'line'; readonly role: PictureRole; readonly points: readonly Point[]; readonly closed: boolean }
  /** The work as it is seen, filled and with its edges: drawn by whoever has its solid. */
  | { readonly is: 'work' }
  /** A distance with arrows: what is left over (negative: what is wanting), or what is needed. */
  | {
      readonly is: 'measure';
      readonly from: Point;
      readonly to: Point;
      readonly mm: number;
      readonly means: 'margin' | 'needed';
      readonly of: VerdictKind;
      readonly state: VerdictState;
    }
  /** What a thing is called, where there is room for it: width and height, mm. */
  | {
      readonly is: 'name';
      readonly of: PictureRole;
      readonly text: string;
      readonly at: Point;
      readonly room: readonly [width: number, height: number];
    };

/** From where the set-up is looked at: across the bed from the operator's place, along it from the tailstock, from above. */
export type PictureSide = 'front' | 'end' | 'above';

/** A view of a set-up, mm. The line of centres is zero. */
export interface PictureView {
  readonly side: PictureSide;
  /** Does not change while the saddle moves. */
  readonly box: { readonly left: number; readonly bottom: number; readonly right: number; readonly top: number };
  /** In drawing order: later ones lie on top. */
  readonly items: readonly PictureItem[];
}

export interface SetupPicture {
  readonly views: readonly PictureView[];
}
