import type { BodyId, DimensionId, PartId, StationId } from '../base/ids.ts';
import type { Dimension } from '../build/dimension.ts';
import type { Part } from '../build/part.ts';
import type { Settings } from '../build/settings.ts';
import type { Axis, Station } from '../build/station.ts';
import type { AxisDrawing, ResolvedDimension } from '../drawing/drawing.ts';
import type { PartMesh, PartState, PlacedBody } from '../solid/placed.ts';

/** A point of the paper in mm from its lower left corner, y upwards. */
export type Point = readonly [x: number, y: number];

/** A rectangle of the paper in mm, sides along its edges. */
export interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** How the views stand to one another (ISO 5456-2:1996, clause 5): first angle, plan below; third angle, plan above. */
export const projections = ['first', 'third'] as const;
export type Projection = (typeof projections)[number];

/** Trimmed sheets of ISO 5457:1999, table 1. */
export const papers = ['A4', 'A3', 'A2', 'A1', 'A0'] as const;
export type Paper = (typeof papers)[number];

/** A cut through a station, seen along its axis: `+` looks towards greater places (what lies before them is gone), `-` the other way. */
export interface SectionChoice {
  readonly station: StationId;
  readonly look: '+' | '-';
}

export interface SheetOptions {
  readonly projection: Projection;
  /** The smallest on which everything finds its place when left out. */
  readonly paper?: Paper | undefined;
  /** Takes the place of the view along the station's axis. */
  readonly section?: SectionChoice | undefined;
}

/** All that a sheet is drawn from: one part of a build. */
export interface SheetSubject {
  readonly part: Part;
  readonly settings: Settings;
  readonly state: PartState;
  /** In list order. */
  readonly stations: readonly Station[];
  /** In list order. */
  readonly dimensions: readonly Dimension[];
  readonly axes: readonly AxisDrawing[];
  readonly resolved: ReadonlyMap<DimensionId, ResolvedDimension>;
  readonly bodies: readonly PlacedBody[];
  /** Undefined while no body of the part is placed, or no kernel made its solid: then only stations and dimensions are drawn. */
  readonly mesh: PartMesh | undefined;
}

/** Drawing scale of ISO 5455:1979: `paper` mm on the sheet stand for `part` mm of the part. */
export interface Scale {
  readonly paper: number;
  readonly part: number;
  /** `1 : 2`, `5 : 1`. */
  readonly words: string;
}

/** Kinds of lines; widths and dashes in {@link lineStyles}. */
export type LineKind =
  | 'visible'
  | 'hidden'
  | 'centre'
  | 'hatching'
  | 'dimension'
  | 'extension'
  | 'leader'
  | 'cutting'
  | 'phantom'
  | 'frame'
  | 'rule';

/** What a mark stands for: the most fitting record first. */
export type Pick = BodyId | StationId | DimensionId | PartId;

/** How sure a figure is; it is drawn accordingly. `plain`: as drawn. */
export type FigureStyle = 'plain' | 'assumed' | 'measured' | 'derived';

interface MarkBase {
  readonly stands: readonly Pick[];
  /** The view it belongs to; undefined for frame, title block and margin box. */
  readonly view: ViewName | undefined;
  readonly style: FigureStyle;
}

/** A polyline. */
export interface LineMark extends MarkBase {
  readonly is: 'line';
  readonly kind: LineKind;
  readonly points: readonly Point[];
  /** The last point joins the first. */
  readonly closed: boolean;
}

/** A filled outline: arrowheads. */
export interface FillMark extends MarkBase {
  readonly is: 'fill';
  readonly points: readonly Point[];
}

/** One line of text. `at` lies on its base line, at the place that `anchor` names. */
export interface TextMark extends MarkBase {
  readonly is: 'text';
  readonly text: string;
  readonly at: Point;
  /** Height of capitals, mm (ISO 3098-1: 2.5, 3.5, 5, 7). */
  readonly heightMm: number;
  /** Its length; writers of files squeeze the letters into it so that it fits in any font. */
  readonly widthMm: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Degrees counter-clockwise: 90 reads from the right of the sheet. */
  readonly turn: 0 | 90;
  readonly bold: boolean;
  readonly underlined: boolean;
  /** What it covers. No two of a sheet overlap. */
  readonly box: Box;
}

export type Mark = LineMark | FillMark | TextMark;

export type ViewName = 'front' | 'top' | 'side';

/** One view and how the part lies in it: paper = origin + scale · (right, up) of the part. */
export interface SheetView {
  readonly name: ViewName;
  /** Words beneath it; only a section has them: `A–A`. */
  readonly title: string | undefined;
  /** The axis that runs across the paper, and the way it grows: +1 to the right. */
  readonly across: { readonly axis: Axis; readonly sign: 1 | -1 };
  readonly up: { readonly axis: Axis; readonly sign: 1 | -1 };
  /** The axis looked along; sign of the direction from the part towards the eye. */
  readonly towards: { readonly axis: Axis; readonly sign: 1 | -1 };
  /** Where zero of the part's axes lies on the paper, mm. */
  readonly origin: Point;
  /** What the part covers in it. */
  readonly box: Box;
  /** Place of the cut along `towards.axis`, mm of the part; undefined unless it is a section. */
  readonly cutAt: number | undefined;
}

/** Something that the sheet cannot show in the views, and why. */
export type Unplaced =
  /** No dimension ties the station to the datum of its axis. */
  | { readonly why: 'station-loose'; readonly id: StationId }
  /** The dimension has no value. */
  | { readonly why: 'no-value'; readonly id: DimensionId }
  /** These of its ends are not placed. */
  | { readonly why: 'ends-loose'; readonly id: DimensionId; readonly stations: readonly StationId[] }
  /** A size that no placed body uses. */
  | { readonly why: 'no-body'; readonly id: DimensionId }
  /** There is no room for it on this paper. */
  | { readonly why: 'no-room'; readonly id: DimensionId }
  /** The body lacks these, or its form cannot be. */
  | {
      readonly why: 'body';
      readonly id: BodyId;
      readonly stations: readonly StationId[];
      readonly dimensions: readonly DimensionId[];
    };

/** One entry of the margin box. */
export interface UnplacedLine {
  readonly of: Unplaced;
  /** One sentence: what is missing where. */
  readonly words: string;
}

/** A drawing of one part: marks in mm of paper. The same subject and options give the same sheet. */
export interface Sheet {
  readonly part: PartId;
  readonly paper: Paper;
  readonly widthMm: number;
  readonly heightMm: number;
  /** The drawing frame inside the margins of ISO 5457. */
  readonly frame: Box;
  readonly projection: Projection;
  readonly scale: Scale;
  readonly views: readonly SheetView[];
  /** In drawing order: later ones lie on top. */
  readonly marks: readonly Mark[];
  readonly unplaced: readonly UnplacedLine[];
}

/** Width in mm and dashes (mm drawn, mm left out, …; none = continuous) of each kind: ISO 128-2:2020, line group 0.5. */
export const lineStyles: Readonly<
  Record<LineKind, { readonly widthMm: number; readonly dashesMm: readonly number[]; readonly standard: string }>
> = {
  visible: { widthMm: 0.5, dashesMm: [], standard: '01.2' },
  // Dashes of 12 d and gaps of 3 d, d being the width (ISO 128-2:2020, line 02; figures from memory).
  hidden: { widthMm: 0.25, dashesMm: [3, 0.75], standard: '02.1' },
  // Long dashes of 24 d, gaps of 3 d, dots of up to half a d (line 04; figures from memory).
  centre: { widthMm: 0.25, dashesMm: [6, 0.75, 0.125, 0.75], standard: '04.1' },
  hatching: { widthMm: 0.25, dashesMm: [], standard: '01.1' },
  dimension: { widthMm: 0.25, dashesMm: [], standard: '01.1' },
  extension: { widthMm: 0.25, dashesMm: [], standard: '01.1' },
  leader: { widthMm: 0.25, dashesMm: [], standard: '01.1' },
  cutting: { widthMm: 0.5, dashesMm: [], standard: '04.2' },
  phantom: { widthMm: 0.25, dashesMm: [6, 0.75, 0.125, 0.75, 0.125, 0.75], standard: '05.1' },
  frame: { widthMm: 0.5, dashesMm: [], standard: '01.2' },
  rule: { widthMm: 0.25, dashesMm: [], standard: '01.1' },
};
