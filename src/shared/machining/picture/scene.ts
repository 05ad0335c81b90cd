import type { OperationId } from '../../base/ids.ts';
import type { Axis } from '../../build/station.ts';
import type { MachineType } from '../../tables/machine-figures.ts';
import type { VerdictKind, VerdictState } from '../setup-check.ts';

/** A point of a picture, mm: to the right and up. */
export type Point = readonly [x: number, y: number];

/** How far the work reaches from the line it turns about, from one place along the bed to another. */
export interface SweptStep {
  readonly from: number;
  readonly to: number;
  /** It never reaches beyond `most`, and reaches at least `least`. */
  readonly most: number;
  readonly least: number;
}

/** The lines of a solid as an eye sees them, and what it covers. */
export interface SeenWork {
  /** Visible edges. */
  readonly lines: readonly (readonly Point[])[];
  /** Closed outlines whose sum (however they overlap) is what the solid hides. */
  readonly cover: readonly (readonly Point[])[];
}

/** What the headstock holds the work with. */
export type LatheHead =
  /** The point of its centre stands `length` before the nose. */
  | { readonly is: 'centre'; readonly length: number | undefined }
  | {
      readonly is: 'chuck';
      readonly jaws: 3 | 4;
      readonly diameter: number | undefined;
      /** How far opened jaws stand out beyond its body. */
      readonly jawReach: number | undefined;
      /** From the nose to the ends of the jaws. */
      readonly length: number | undefined;
      /** How much of that is jaw. */
      readonly depth: number | undefined;
      /** The radius that the jaws close on, and whether they open in a bore. */
      readonly grip: number | undefined;
      readonly inside: boolean;
    }
  | { readonly is: 'plate'; readonly diameter: number | undefined; readonly face: number | undefined };

/** The tailstock, where one is used. */
export interface LatheTail {
  /** Where its point stands. */
  readonly point: number;
  readonly centreLength: number | undefined;
  readonly barrelDiameter: number | undefined;
  /** How far the barrel has to stand out of the tailstock. */
  readonly out: number | undefined;
  /** How far it can. */
  readonly travel: number | undefined;
}

/** What rides on the bed. What is not known of it is not drawn. */
export interface LatheSaddle {
  /** Radius over its wings, and how far they reach from the edge of the tool to head and tail. */
  readonly wingRadius: number | undefined;
  readonly towardsHead: number | undefined;
  readonly towardsTail: number | undefined;
  readonly slideRadius: number | undefined;
  /** Along the bed, half to each side of the edge. */
  readonly slideWidth: number | undefined;
  /** From the seat of the tool up to the line of centres. */
  readonly toolHeight: number | undefined;
  readonly blockWidth: number | undefined;
  /** From the block to the edge. */
  readonly toolOverhang: number | undefined;
}

/** Where an edge travels. */
export interface Cut {
  readonly operation: OperationId | undefined;
  readonly name: string;
  /** By a tool on the saddle from without or within, by one that the tailstock or the spindle feeds, or across flat work. */
  readonly way: 'outside' | 'inside' | 'drilled' | 'flat';
  readonly from: number;
  readonly to: number;
  /** Largest radius, and the least one of a face or a shoulder. */
  readonly radius: number | undefined;
  readonly inner: number | undefined;
  /** Radius of a drill, a cutter or a bar, and how far it stands out of what holds it. */
  readonly toolRadius: number | undefined;
  readonly toolLength: number | undefined;
  /** Where the block stands about the edge, in its own widths: from and to, towards the tailstock positive. */
  readonly block: Span;
  /** How far the saddle stands off where a tool set square would have it, towards the tailstock positive. */
  readonly shift: number;
}

/** What the picture measures: a verdict in the places of the picture. */
export interface ShownVerdict {
  readonly kind: VerdictKind;
  readonly state: VerdictState;
  /** The cut that asks for it. */
  readonly operation: OperationId | undefined;
  readonly margin: number | undefined;
  readonly has: number | undefined;
  readonly needs: number | undefined;
  /** Along the bed; undefined where it is not of one place. */
  readonly at: number | undefined;
}

/** What is looked at: where the edge stands, for which cut, and which verdict is measured. */
export interface LatheLook {
  /** Where the edge of the tool stands along the bed. */
  readonly tool: number;
  /** The cut on show. */
  readonly cut: Cut | undefined;
  readonly shown: ShownVerdict | undefined;
}

/**
 * A turning set-up with everything that is known of it, mm. Places along the bed count from the headmost point of the work
 * (with what is fixed to it) towards the tailstock.
 */
export interface LatheScene {
  readonly is: 'lathe';
  /** Rising, without overlaps. */
  readonly swept: readonly SweptStep[];
  /** The outline of the swept solid, from end to end: finer than its steps where it slopes. Empty: the steps are drawn. */
  readonly outline: readonly { readonly at: number; readonly r: number }[];
  readonly extent: readonly [from: number, to: number];
  /** Top of the bed under the line of centres; its outline across, front negative, upwards positive; empty: flat. */
  readonly frame: PictureFrame;
  readonly bed: { readonly radius: number | undefined; readonly outline: readonly Point[] };
  readonly gap: { readonly radius: number; readonly length: number } | undefined;
  /** Face of the spindle's nose. */
  readonly nose: number | undefined;
  readonly head: LatheHead;
  readonly tail: LatheTail | undefined;
  readonly steady:
    | { readonly at: number; readonly width: number | undefined; readonly radius: number | undefined }
    | undefined;
  readonly saddle: LatheSaddle;
  readonly cuts: readonly Cut[];
}

/** Work that stands still on a table or in a vise, or moves along straight ways; heights count from what it lies on. */
export interface TableScene {
  readonly is: 'table';
  readonly machine: MachineType;
  readonly frame: PictureFrame;
  /** Of the work with what is fixed to it: along the picture from the front, to the back, and up. */
  readonly size: { readonly along: Span; readonly back: Span; readonly up: Span };
  /** What the jaws of a vise close on; undefined on a table. */
  readonly jaws: { readonly way: 'along' | 'back' | 'up'; readonly span: Span } | undefined;
  /** What the machine has, by the keys of its figures, mm; what is unknown is absent. */
  readonly has: Readonly<Record<string, number>>;
  /** Whether the tool moves up and down rather than along: what `from` and `to` of a cut then are. */
  readonly isUpright: boolean;
  /** What was found to hit: only that is filled, for the picture shows one way to lay the work of several. */
  readonly hits: readonly VerdictKind[];
  readonly cuts: readonly Cut[];
}

/** From and to, rising. */
export type Span = readonly [from: number, to: number];

/** One direction of a picture: along which axis of the part it runs, which way, and where its zero lies on that axis, mm. */
export interface PictureAxis {
  readonly axis: Axis;
  readonly sign: 1 | -1;
  readonly zero: number;
}

/** How the part lies in the picture: to the right from the front, to the back, and up; up × along = back. */
export interface PictureFrame {
  readonly along: PictureAxis;
  readonly back: PictureAxis;
  readonly up: PictureAxis;
}

export type SetupScene = LatheScene | TableScene;
