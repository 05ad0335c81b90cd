import { useEffect, useId, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { RecordId } from '../../../../shared/build/records.ts';
import { goTo, usePlace } from '../../../app/place.ts';
import type { StripModel } from '../../../engine/views/strip.ts';
import { TipBox } from '../../../kit/tip.tsx';
import { useSize } from '../../../kit/use-size.ts';
import { fitLook, layStrip, type StripLook, scaleMarks, zoomLook } from './layout.ts';
import { Arcs, Bases, ConflictNotes, Scale, Ticks, Ties } from './marks.tsx';
import { wordsOfArc, wordsOfStation } from './words.ts';

interface ChainStripProps {
  readonly model: StripModel;
  readonly inch: boolean;
  /** Bridges a gap: fills in the dimension that stands there, or adds one. */
  readonly onTie: (tie: StripModel['ties'][number]) => void;
  readonly onOpenRow: (id: RecordId) => void;
  /** Counts up when "fit" is asked for from outside. */
  readonly fits: number;
  readonly zooms: { readonly count: number; readonly factor: number };
}

const MOVE_MS = 260;
const ZOOM_STEP = 1.25;
const TIP_AFTER_MS = 350;

/** One axis of a part: stations as ticks at their true places, dimensions as arcs, what is amiss where it is amiss. */
export function ChainStrip({ model, inch, onTie, onOpenRow, fits, zooms }: ChainStripProps) {
  const id = useId();
  const box = useRef<HTMLDivElement>(null);
  const { width, height: room } = useSize(box);
  const place = usePlace();
  const [own, setOwn] = useState<StripLook>();
  const [hovered, setHovered] = useState<{ readonly id: string; readonly rect: DOMRect }>();
  const look = own ?? fitLook(model, width);
  const layout = useMemo(() => layStrip(model, look, width, room), [model, look, width, room]);
  const moving = useMoving(model);
  const lit = useMemo(
    () => new Set<string>([...(place.subject === undefined ? [] : [place.subject]), ...place.also]),
    [place],
  );

  // A long way to a new place and scale is no help to anyone: going to another axis or part fits it anew.
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked for by the count, and by the axis alone
  useEffect(() => setOwn(undefined), [fits, model.axis]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked for by the count alone
  useEffect(() => {
    if (zooms.count > 0) setOwn(zoomLook(look, zooms.factor, width / 2));
  }, [zooms.count]);
  useWheel(box, (factor, x, shift) =>
    setOwn((now) => {
      const from = now ?? fitLook(model, width);
      return shift === 0 ? zoomLook(from, factor, x) : { ...from, left: from.left + shift / from.scale };
    }),
  );
  const drag = useRef<{ readonly x: number; readonly left: number } | undefined>(undefined);

  const select = (subject: RecordId, also: readonly RecordId[] = []) => goTo({ subject, also });
  const order = layout.ticks.map((tick) => tick.station.id as RecordId);
  const onKeyDown = (event: React.KeyboardEvent) => {
    const next = nextByKey(event.key, { model, order, subject: place.subject });
    if (next !== undefined) select(next);
    else if (event.key === '+' || event.key === '=') setOwn(zoomLook(look, ZOOM_STEP, width / 2));
    else if (event.key === '-') setOwn(zoomLook(look, 1 / ZOOM_STEP, width / 2));
    else if (event.key === '0') setOwn(undefined);
    else if (event.key === 'Enter' && place.subject !== undefined) onOpenRow(place.subject);
    else return;
    event.preventDefault();
  };
  // What is chosen by keys or elsewhere comes into view.
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when another is chosen
  useLayoutEffect(() => {
    if (own === undefined || place.subject === undefined) return;
    const spot = layout.at.get(place.subject);
    if (spot === undefined || (spot.x >= 20 && spot.x <= width - 20)) return;
    setOwn({ ...own, left: own.left + (spot.x - width / 2) / own.scale });
  }, [place.subject]);

  // A strip taller than its pane begins at the stations: from them one finds one's way.
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when another is shown
  useLayoutEffect(() => {
    if (box.current !== null) box.current.scrollTop = box.current.scrollHeight;
  }, [model.axis, model.datum, width > 0]);
  useLayoutEffect(() => {
    const chosen = place.subject === undefined ? null : document.getElementById(`${id}${place.subject}`);
    chosen?.querySelector('text')?.scrollIntoView({ block: 'nearest' });
  }, [place.subject, id]);

  const tip = hovered === undefined ? undefined : tipOf(model, hovered.id);
  const active =
    place.subject !== undefined && (layout.at.has(place.subject) || model.arcs.some((arc) => arc.id === place.subject));
  const waiting = useRef(0);
  const onHover = (subject: string | undefined, element?: Element) => {
    window.clearTimeout(waiting.current);
    if (subject === undefined || element === undefined) return setHovered(undefined);
    waiting.current = window.setTimeout(() => {
      if (element.isConnected) setHovered({ id: subject, rect: element.getBoundingClientRect() });
    }, TIP_AFTER_MS);
  };
  useEffect(() => () => window.clearTimeout(waiting.current), []);
  return (
    <div className="strip-frame">
      <div
        ref={box}
        className={moving ? 'strip moves' : 'strip'}
        role="listbox"
        aria-label={`Chain along ${model.axis}: ${model.stations.length} stations, ${model.arcs.length} dimensions`}
        aria-orientation="horizontal"
        tabIndex={0}
        data-pane-entry
        aria-activedescendant={active ? `${id}${place.subject}` : undefined}
        onKeyDown={onKeyDown}
        onPointerDown={(event) => {
          if (event.button !== 0 || (event.target as Element).closest('[role="option"], button')) return;
          drag.current = { x: event.clientX, left: look.left };
          event.currentTarget.setPointerCapture(event.pointerId);
        }}
        onPointerMove={(event) => {
          const from = drag.current;
          if (from !== undefined && Math.abs(event.clientX - from.x) > 2)
            setOwn({ scale: look.scale, left: from.left - (event.clientX - from.x) / look.scale });
        }}
        onPointerUp={() => {
          drag.current = undefined;
        }}
      >
        {width > 0 && (
          <svg
            className="strip-drawing"
            width={width}
            height={Math.max(layout.height, room - 1)}
            role="presentation"
            // A short drawing stands in the middle of its pane, not at its very top.
            viewBox={`0 ${-Math.max(0, Math.floor((room - layout.height) / 2))} ${width} ${Math.max(layout.height, room - 1)}`}
          >
            <Scale
              marks={scaleMarks(look, width, inch ? 25.4 : 1)}
              look={look}
              layout={layout}
              unit={inch ? 'in' : 'mm'}
            />
            <Bases layout={layout} model={model} />
            <Ties layout={layout} onTie={onTie} />
            <Arcs
              model={model}
              layout={layout}
              lit={lit}
              idPrefix={id}
              onSelect={select}
              onOpen={onOpenRow}
              onHover={onHover}
            />
            <Ticks
              model={model}
              layout={layout}
              lit={lit}
              idPrefix={id}
              onSelect={select}
              onOpen={onOpenRow}
              onHover={onHover}
            />
          </svg>
        )}
      </div>
      <ConflictNotes model={model} lit={lit} onSelect={select} />
      {tip !== undefined && hovered !== undefined && (
        <TipBox id={`${id}tip`} anchor={hovered.rect}>
          {tip}
        </TipBox>
      )}
    </div>
  );
}

function tipOf(model: StripModel, id: string): string | undefined {
  const station = model.stations.find((each) => each.id === id);
  if (station !== undefined) return wordsOfStation(model, station);
  const arc = model.arcs.find((each) => each.id === id);
  return arc === undefined ? undefined : wordsOfArc(model, arc);
}

interface KeyInput {
  readonly model: StripModel;
  readonly order: readonly RecordId[];
  readonly subject: RecordId | undefined;
}

/** Left and right go from station to station; up and down through the dimensions at the station in hand. */
function nextByKey(key: string, { model, order, subject }: KeyInput): RecordId | undefined {
  const arc = model.arcs.find((each) => each.id === subject);
  const station = arc === undefined ? subject : arc.from;
  const here = station === undefined ? -1 : order.indexOf(station);
  switch (key) {
    case 'ArrowRight':
      return order[here + 1];
    case 'ArrowLeft':
      return here < 0 ? order[0] : order[here - 1];
    case 'Home':
      return order[0];
    case 'End':
      return order.at(-1);
    case 'ArrowUp':
    case 'ArrowDown': {
      const around = model.arcs
        .filter((each) => each.from === station || each.to === station)
        .map((each) => each.id as RecordId);
      const step = key === 'ArrowUp' ? 1 : -1;
      const at = arc === undefined ? (step === 1 ? -1 : around.length) : around.indexOf(arc.id);
      return around[at + step] ?? (arc === undefined ? undefined : station);
    }
    default:
      return undefined;
  }
}

/** True for a moment after the model has changed, never for zooming: then ticks glide to their new places. */
function useMoving(model: StripModel): boolean {
  const [moving, setMoving] = useState(false);
  const before = useRef(model);
  useLayoutEffect(() => {
    if (before.current === model) return;
    const sameAxis = before.current.axis === model.axis && before.current.stations[0]?.id === model.stations[0]?.id;
    before.current = model;
    setMoving(sameAxis);
    const timer = setTimeout(() => setMoving(false), MOVE_MS);
    return () => clearTimeout(timer);
  }, [model]);
  return moving;
}

/** React's wheel listener is passive and cannot keep the page still. */
function useWheel(
  box: React.RefObject<HTMLDivElement | null>,
  onWheel: (factor: number, x: number, shift: number) => void,
): void {
  const latest = useRef(onWheel);
  latest.current = onWheel;
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const listener = (event: WheelEvent) => {
      event.preventDefault();
      const x = event.clientX - element.getBoundingClientRect().left;
      const sideways = event.shiftKey ? event.deltaY || event.deltaX : event.deltaX;
      latest.current(Math.exp(-event.deltaY / 400), x, sideways);
    };
    element.addEventListener('wheel', listener, { passive: false });
    return () => element.removeEventListener('wheel', listener);
  }, [box]);
}
