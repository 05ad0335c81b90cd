export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box extends Point {
  readonly width: number;
  readonly height: number;
}

/** What is to be laid out. Sizes are in px at full scale. */
export interface LayoutRequest {
  readonly nodes: readonly { readonly id: string; readonly width: number; readonly height: number }[];
  readonly lines: readonly {
    readonly id: string;
    readonly from: string;
    readonly to: string;
    readonly labelWidth: number;
  }[];
}

/** Where everything stands: boxes by their upper left corner, lines by the points that they pass. */
export interface MapLayout {
  readonly boxes: Readonly<Record<string, Box>>;
  readonly lines: Readonly<Record<string, { readonly points: readonly Point[]; readonly label: Point | undefined }>>;
  readonly width: number;
  readonly height: number;
}
