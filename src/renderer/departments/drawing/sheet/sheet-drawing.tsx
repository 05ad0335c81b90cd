import { useEffect, useId, useMemo, useRef, useState } from 'react';
import type { RecordId } from '../../../../shared/build/records.ts';
import type { Point, Sheet } from '../../../../shared/sheet/sheet.ts';
import { goTo, usePlace } from '../../../app/place.ts';
import { useSize } from '../../../kit/use-size.ts';
import { markAt, pickOf } from './hit.ts';
import { OriginTip } from './origin-tip.tsx';
import { boxOfViews, fitBox, fitPaper, type PaperLook, panPaper, zoomPaper } from './paper-look.ts';
import { SheetMarks } from './sheet-marks.tsx';

/** Something that can be picked on the sheet, with its words for the ear. */
export interface SheetItem {
  readonly id: RecordId;
  readonly words: string;
}

interface SheetDrawingProps {
  readonly sheet: Sheet;
  readonly label: string;
  readonly items: readonly SheetItem[];
  /** Bodies that hang on what is picked. */
  readonly also: ReadonlySet<string>;
  /** Asked for by buttons; another object is another wish. */
  readonly wish: PaperWish | undefined;
}

/** `fit`: all that is drawn; `paper`: the whole paper. */
export type PaperWish = { readonly is: 'fit' | 'paper' } | { readonly is: 'zoom'; readonly factor: number };

const REACH_PX = 6;
const STEP_PX = 60;
const ZOOM_STEP = 1.25;
const CLICK_PX = 4;
const TIP_AFTER_MS = 350;

/** The sheet on its board: moved and brought near by mouse, touchpad and keys; everything on it can be picked. */
export function SheetDrawing({ sheet, label, items, also, wish }: SheetDrawingProps) {
  const id = useId();
  const box = useRef<HTMLDivElement>(null);
  const size = useSize(box);
  const { subject, also: others } = usePlace();
  const [own, setOwn] = useState<PaperLook>();
  const [hovered, setHovered] = useState<{ readonly id: RecordId; readonly anchor: DOMRect }>();
  const fitted = useMemo(() => fitBox(boxOfViews(sheet), sheet.heightMm, size), [sheet, size]);
  const look = own ?? fitted;
  const lit = useMemo(() => new Set<string>(subject === undefined ? others : [subject, ...others]), [subject, others]);
  const middle: Point = [size.width / 2, size.height / 2];

  // Another part or another paper is fitted; the same paper stays as it lies, however its figures change.
  // biome-ignore lint/correctness/useExhaustiveDependencies: when another paper lies on the board
  useEffect(() => setOwn(undefined), [sheet.part, sheet.paper, sheet.widthMm]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a wish is carried out once, when it is made
  useEffect(() => {
    if (wish?.is === 'fit') setOwn(undefined);
    else if (wish?.is === 'paper') setOwn(fitPaper(sheet, size));
    else if (wish?.is === 'zoom') setOwn(zoomPaper(look, wish.factor, ...middle));
  }, [wish]);
  useWheel(box, (factor, x, y, aside) =>
    setOwn((now) => {
      const from = now ?? fitted;
      return aside === 0 ? zoomPaper(from, factor, x, y) : panPaper(from, -aside, 0);
    }),
  );

  const under = (event: React.PointerEvent) => {
    const rect = event.currentTarget.getBoundingClientRect();
    const x = (event.clientX - rect.left - look.x) / look.scale;
    const y = sheet.heightMm - (event.clientY - rect.top - look.y) / look.scale;
    return markAt(sheet, [x, y], REACH_PX / look.scale);
  };
  const drag = useRef<{ x: number; y: number; moved: number } | undefined>(undefined);
  const waiting = useRef(0);
  useEffect(() => () => window.clearTimeout(waiting.current), []);
  const hover = (event: React.PointerEvent) => {
    const over = under(event)?.stands[0] as RecordId | undefined;
    event.currentTarget.classList.toggle('over-mark', over !== undefined);
    window.clearTimeout(waiting.current);
    if (hovered?.id !== over) setHovered(undefined);
    if (over === undefined) return;
    const anchor = new DOMRect(event.clientX, event.clientY - 8, 1, 16);
    waiting.current = window.setTimeout(() => setHovered({ id: over, anchor }), TIP_AFTER_MS);
  };
  const onPointerMove = (event: React.PointerEvent) => {
    const from = drag.current;
    if (from === undefined) return hover(event);
    const [dx, dy] = [event.clientX - from.x, event.clientY - from.y];
    from.moved += Math.abs(dx) + Math.abs(dy);
    if (from.moved < CLICK_PX) return;
    from.x = event.clientX;
    from.y = event.clientY;
    setOwn((now) => panPaper(now ?? look, dx, dy));
  };
  const onPointerUp = (event: React.PointerEvent) => {
    const from = drag.current;
    drag.current = undefined;
    if (from === undefined || from.moved >= CLICK_PX || event.button !== 0) return;
    goTo({ subject: pickOf(under(event), subject) as RecordId | undefined });
  };
  const here = items.findIndex((item) => item.id === subject);
  const onKeyDown = (event: React.KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const arrow = arrows[event.key];
    if (event.key === 'Escape' && hovered !== undefined) setHovered(undefined);
    else if (arrow !== undefined && event.shiftKey) setOwn(panPaper(look, -arrow[0] * STEP_PX, -arrow[1] * STEP_PX));
    else if (arrow !== undefined || event.key === 'Home' || event.key === 'End') {
      const step = arrow === undefined ? 0 : arrow[0] + arrow[1];
      const to = event.key === 'Home' ? 0 : event.key === 'End' ? items.length - 1 : here < 0 ? 0 : here + step;
      const next = items[to];
      if (next !== undefined) goTo({ subject: next.id });
    } else if (event.key === '+' || event.key === '=') setOwn(zoomPaper(look, ZOOM_STEP, ...middle));
    else if (event.key === '-') setOwn(zoomPaper(look, 1 / ZOOM_STEP, ...middle));
    else if (event.key === '0') setOwn(undefined);
    else if (event.key.toLowerCase() === 'p') setOwn(fitPaper(sheet, size));
    else return;
    event.preventDefault();
  };
  return (
    <div
      ref={box}
      className="sheet-board"
      role="listbox"
      aria-label={label}
      tabIndex={0}
      data-pane-entry
      aria-activedescendant={here < 0 ? undefined : `${id}${here}`}
      onKeyDown={onKeyDown}
      onPointerDown={(event) => {
        drag.current = { x: event.clientX, y: event.clientY, moved: 0 };
        setHovered(undefined);
        window.clearTimeout(waiting.current);
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerLeave={() => {
        window.clearTimeout(waiting.current);
        setHovered(undefined);
      }}
    >
      {size.width > 0 && (
        <svg
          className="sheet-svg"
          width={size.width}
          height={size.height}
          aria-hidden="true"
          // Lines of the paper are never thinner than the screen can show.
          style={
            {
              '--thick': Math.max(0.5, 1.5 / look.scale),
              '--thin': Math.max(0.25, 0.8 / look.scale),
            } as React.CSSProperties
          }
        >
          <g transform={`translate(${look.x} ${look.y}) scale(${look.scale})`}>
            <rect className="sheet-paper" width={sheet.widthMm} height={sheet.heightMm} />
            <SheetMarks sheet={sheet} lit={lit} also={also} />
          </g>
        </svg>
      )}
      {items.map((item, i) => (
        <div key={item.id} id={`${id}${i}`} role="option" aria-selected={i === here} className="unseen">
          {item.words}
        </div>
      ))}
      {hovered !== undefined && <OriginTip id={hovered.id} anchor={hovered.anchor} />}
    </div>
  );
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** React's wheel listener is passive and cannot keep the page still. A pinch comes as a wheel with Ctrl. */
function useWheel(
  box: React.RefObject<HTMLDivElement | null>,
  onWheel: (factor: number, x: number, y: number, aside: number) => void,
): void {
  const latest = useRef(onWheel);
  latest.current = onWheel;
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const listener = (event: WheelEvent) => {
      event.preventDefault();
      const rect = element.getBoundingClientRect();
      const aside = event.shiftKey ? event.deltaY || event.deltaX : event.ctrlKey ? 0 : event.deltaX;
      const speed = event.ctrlKey ? 100 : 500;
      latest.current(Math.exp(-event.deltaY / speed), event.clientX - rect.left, event.clientY - rect.top, aside);
    };
    element.addEventListener('wheel', listener, { passive: false });
    return () => element.removeEventListener('wheel', listener);
  }, [box]);
}
