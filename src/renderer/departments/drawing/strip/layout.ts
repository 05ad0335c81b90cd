import type { StripArc, StripModel, StripStation, StripTie } from '../../../engine/views/strip.ts';

/** How the strip is looked at: pixels per mm, and which place (in strip mm) stands at the left edge. */
export interface StripLook {
  readonly scale: number;
  readonly left: number;
}

export interface PlacedTick {
  readonly station: StripStation;
  readonly x: number;
  readonly y: number;
  /** Row of its name below the rule, 0 nearest. */
  readonly row: number;
  /** Where its name begins. */
  readonly nameX: number;
  readonly bandFrom: number;
  readonly bandTo: number;
}

export interface PlacedArc {
  readonly arc: StripArc;
  readonly x1: number;
  readonly x2: number;
  readonly y1: number;
  readonly y2: number;
  readonly height: number;
}

export interface PlacedTie extends Omit<PlacedArc, 'arc'> {
  readonly tie: StripTie;
  /** As much of its sentence as there is room for. */
  readonly label: string;
  readonly labelX: number;
}

export interface PlacedBase {
  readonly group: number;
  readonly x1: number;
  readonly x2: number;
  readonly y: number;
  /** On which side there is room to say that it floats. */
  readonly noteSide: 'left' | 'right' | undefined;
}

export interface StripLayout {
  readonly ticks: readonly PlacedTick[];
  readonly arcs: readonly PlacedArc[];
  readonly bases: readonly PlacedBase[];
  readonly ties: readonly PlacedTie[];
  /** So many ties that their words would stand in one another's way: they are shown one at a time. */
  readonly tiesCrowded: boolean;
  /** Where each station stands. */
  readonly at: ReadonlyMap<string, { readonly x: number; readonly y: number }>;
  readonly nameRows: number;
  readonly height: number;
  /** y of the rule. */
  readonly rule: number;
}

/** px */
const STEP = 22;
const LEAST_STEP = 14;
const MOST_STEP = 34;
const FIRST = 26;
const LEAST_TIE_STEP = 6;
const LETTERED_TIE_STEP = 16;
const TOP = 20;
const DROP = 30;
const NAME_ROW = 17;
const NAME_GAP = 10;
const MARGIN = 56;
const BELOW = 20;
const FOOT = 18;
/** Room for "not tied to the datum". */
const NOTE = 124;
/** Mean advance of a condensed letter at 13 px; the names are spaced by it, not measured, so that layout stays pure. */
const LETTER = 6.3;

/**
 * Where each group begins, in strip mm. The datum's group stands at its true place; every other floats to the right of
 * the one before, apart by a fixed share of the whole: the gap that no dimension bridges has no length.
 */
export function groupOffsets(model: StripModel): readonly number[] {
  const extents = Array.from({ length: model.groups }, () => ({
    least: Number.POSITIVE_INFINITY,
    most: Number.NEGATIVE_INFINITY,
  }));
  for (const { group, at } of model.stations) {
    const extent = extents[group];
    if (extent === undefined) continue;
    extent.least = Math.min(extent.least, at);
    extent.most = Math.max(extent.most, at);
  }
  const whole = extents.reduce((sum, { least, most }) => sum + Math.max(0, most - least), 0);
  const gap = Math.max(whole * 0.12, 1);
  const offsets: number[] = [];
  let edge: number | undefined;
  for (const { least, most } of extents) {
    if (least > most) offsets.push(0);
    else {
      const offset: number = edge === undefined ? 0 : edge + gap - least;
      offsets.push(offset);
      edge = most + offset;
    }
  }
  return offsets;
}

/** The look that shows everything in the given width. */
export function fitLook(model: StripModel, width: number): StripLook {
  const offsets = groupOffsets(model);
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const { group, at, minus, plus } of model.stations) {
    least = Math.min(least, at + minus + (offsets[group] ?? 0));
    most = Math.max(most, at + plus + (offsets[group] ?? 0));
  }
  if (least > most) return { scale: 1, left: 0 };
  const room = Math.max(40, width - 2 * MARGIN);
  const scale = most - least < 1e-9 ? 1 : room / (most - least);
  const centre = (least + most) / 2;
  return { scale, left: centre - width / 2 / scale };
}

/** Keeps the place under the pointer where it is while the scale changes. */
export function zoomLook(look: StripLook, factor: number, x: number): StripLook {
  const scale = Math.min(1e6, Math.max(1e-6, look.scale * factor));
  return { scale, left: look.left + x / look.scale - x / scale };
}

interface Span {
  readonly low: number;
  readonly high: number;
}

/** Short spans lie low; one that overlaps others stands above them all, so that nested arcs do not cross. */
function levels(spans: readonly Span[]): readonly number[] {
  const order = spans.map((_, i) => i).sort((a, b) => width(spans[a]!) - width(spans[b]!) || a - b);
  const level = new Array<number>(spans.length).fill(0);
  const done: number[] = [];
  for (const i of order) {
    const span = spans[i]!;
    let least = 0;
    for (const j of done) {
      const other = spans[j]!;
      if (other.low < span.high - 1e-9 && span.low < other.high - 1e-9) least = Math.max(least, level[j]! + 1);
    }
    level[i] = least;
    done.push(i);
  }
  return level;
}
const width = (span: Span): number => span.high - span.low;

/** Lays the strip out in pixels. Pure: the same model and look give the same picture. */
export function layStrip(model: StripModel, look: StripLook, pxWide: number, pxHigh: number): StripLayout {
  const offsets = groupOffsets(model);
  const placeOf = (station: StripStation) => station.at + (offsets[station.group] ?? 0);
  const byId = new Map(model.stations.map((station) => [station.id as string, station]));
  const spanOf = ({ from, to }: Pick<StripTie, 'from' | 'to'>): Span => {
    const [a, b] = [placeOf(byId.get(from)!), placeOf(byId.get(to)!)];
    return { low: Math.min(a, b), high: Math.max(a, b) };
  };
  const level = levels(model.arcs.map(spanOf));
  const tallest = Math.max(0, ...level);
  const tieLevel = levels(model.ties.map(spanOf));
  const tieLevels = model.ties.length === 0 ? 0 : Math.max(...tieLevel) + 1;
  const xOf = (place: number) => (place - look.left) * look.scale;
  const named = nameRowsOf(model, (station) => xOf(placeOf(station)), pxWide);
  const below = (model.groups > 1 ? DROP : 0) + BELOW + named.rows * NAME_ROW + FOOT;
  // Many levels are drawn closer together, and few in a tall pane farther apart, rather than off the sheet.
  const tieRoom = (pxHigh - below - TOP - FIRST - tallest * LEAST_STEP) / Math.max(1, tieLevels);
  const tieStep = Math.min(STEP, Math.max(LEAST_TIE_STEP, tieRoom));
  const ghost = tieLevels * tieStep;
  const step = Math.min(MOST_STEP, Math.max(LEAST_STEP, (pxHigh - below - TOP - FIRST - ghost) / Math.max(1, tallest)));
  const rule = TOP + FIRST + ghost + tallest * step;
  const yOf = (group: number) => rule + (group === 0 ? 0 : DROP);
  const at = new Map(
    model.stations.map((station) => [station.id as string, { x: xOf(placeOf(station)), y: yOf(station.group) }]),
  );
  const ticks = named.order.map(({ station, row, nameX }): PlacedTick => {
    const { x, y } = at.get(station.id)!;
    return {
      station,
      x,
      y,
      row,
      nameX,
      bandFrom: x + station.minus * look.scale,
      bandTo: x + station.plus * look.scale,
    };
  });
  return {
    ticks,
    arcs: model.arcs.map((arc, i) => {
      const [from, to] = [at.get(arc.from)!, at.get(arc.to)!];
      return { arc, x1: from.x, x2: to.x, y1: from.y, y2: to.y, height: FIRST + level[i]! * step };
    }),
    bases: basesOf(model, at, yOf, pxWide),
    ties: model.ties.map((tie, i): PlacedTie => {
      const [from, to] = [at.get(tie.from)!, at.get(tie.to)!];
      const top = TOP + ghost - (tieLevel[i]! + 1) * tieStep;
      const label = tie.sentence.length * LETTER < Math.abs(to.x - from.x) - 16 ? tie.sentence : tie.act;
      const half = (label.length * LETTER) / 2 + 4;
      return {
        tie,
        x1: from.x,
        x2: to.x,
        y1: from.y,
        y2: to.y,
        height: Math.min(from.y, to.y) - top,
        label,
        labelX: Math.max(half, Math.min((from.x + to.x) / 2, pxWide - half)),
      };
    }),
    tiesCrowded: tieLevels > 1 && tieStep < LETTERED_TIE_STEP,
    at,
    nameRows: named.rows,
    height: rule + below,
    rule,
  };
}

function basesOf(
  model: StripModel,
  at: StripLayout['at'],
  yOf: (group: number) => number,
  pxWide: number,
): readonly PlacedBase[] {
  const spans = Array.from({ length: model.groups }, (_, group) => {
    const xs = model.stations.filter((station) => station.group === group).map((station) => at.get(station.id)!.x);
    return { group, x1: Math.min(...xs), x2: Math.max(...xs), y: yOf(group) };
  }).filter(({ x1 }) => Number.isFinite(x1));
  return spans.map((span, i): PlacedBase => {
    if (span.group === 0) return { ...span, noteSide: undefined };
    const right = Math.min(pxWide, spans[i + 1]?.x1 ?? pxWide) - span.x1;
    const before = spans[i - 1];
    const left = span.x1 - Math.max(0, before === undefined || before.group === 0 ? 0 : before.x2);
    return { ...span, noteSide: right > NOTE ? 'right' : left > NOTE ? 'left' : undefined };
  });
}

interface NamedStation {
  readonly station: StripStation;
  readonly row: number;
  readonly nameX: number;
}

/** Names side by side where there is room, else a row lower. Off the edges of the sheet they need no room. */
function nameRowsOf(
  model: StripModel,
  xOf: (station: StripStation) => number,
  pxWide: number,
): { readonly order: readonly NamedStation[]; readonly rows: number } {
  const ends: number[] = [];
  const sorted = model.stations.toSorted((a, b) => xOf(a) - xOf(b) || (a.id < b.id ? -1 : 1));
  const order = sorted.map((station): NamedStation => {
    const x = xOf(station);
    const wide = station.name.length * LETTER + 4;
    const nameX = Math.max(4, Math.min(x - wide / 2, pxWide - wide - 4));
    const seen = x > -wide && x < pxWide + wide;
    let row = 0;
    while (seen && (ends[row] ?? Number.NEGATIVE_INFINITY) + NAME_GAP > nameX) row++;
    if (seen) ends[row] = nameX + wide;
    return { station, row, nameX: seen ? nameX : x - wide / 2 };
  });
  return { order, rows: Math.max(1, ends.length) };
}

/** y of a name row, from the lowest baseline. */
export const nameY = (layout: StripLayout, row: number, groups: number): number =>
  layout.rule + (groups > 1 ? DROP : 0) + BELOW + row * NAME_ROW + 12;

/** A dimension's arc: it rises steeply, runs level, and comes down. */
export function arcPath({ x1, x2, y1, y2, height }: Omit<PlacedArc, 'arc'>): string {
  const top = Math.min(y1, y2) - height;
  const reach = Math.sign(x2 - x1) * Math.min(Math.abs(x2 - x1) / 2, height * 0.9);
  const n = (value: number) => Math.round(value * 10) / 10;
  return `M${n(x1)} ${n(y1)} Q${n(x1)} ${n(top)} ${n(x1 + reach)} ${n(top)} L${n(x2 - reach)} ${n(top)} Q${n(x2)} ${n(top)} ${n(x2)} ${n(y2)}`;
}

/**
 * Round marks for a scale under the rule: about one in 90 px, at 1, 2 or 5 times a power of ten.
 * @param unitMm length of one unit of the scale: 1, or 25.4 for inches. Places are in strip mm.
 */
export function scaleMarks(
  look: StripLook,
  pxWide: number,
  unitMm: number,
): readonly { readonly place: number; readonly label: string }[] {
  const raw = 90 / look.scale / unitMm;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = power * (raw / power <= 2 ? 2 : raw / power <= 5 ? 5 : 10);
  const first = Math.ceil(look.left / unitMm / step);
  const last = Math.floor((look.left + pxWide / look.scale) / unitMm / step);
  if (last - first > 400) return [];
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
    const value = (first + i) * step;
    return { place: value * unitMm, label: (value === 0 ? 0 : value).toFixed(decimals) };
  });
}
