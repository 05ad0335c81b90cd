import { getViewportForBounds, useReactFlow } from '@xyflow/react';
import { useEffect, useLayoutEffect, useRef } from 'react';
import type { MapLayout } from './places.ts';

export const ZOOM = { min: 0.08, max: 2, step: 1.25 } as const;
const MARGIN_PX = 16;
const ROW_ROOM_PX = 24;
/** What was searched for is shown at least this large. */
const READABLE = 0.8;

interface MapViewed {
  readonly layout: MapLayout | undefined;
  readonly part: string | undefined;
  /** Where the selected row of the selected part lies, in px from the top of its sheet. */
  readonly rowAt: number | undefined;
  /** Counts up when the selection is to be brought into view, large enough to read. */
  readonly shown: number;
}

/**
 * Where the reader looks. The map stays fitted until the reader moves it; after that the selected part is held still
 * when the layout changes, and what is chosen is brought into view.
 */
export function useMapView({ layout, part, rowAt, shown }: MapViewed) {
  const flow = useReactFlow();
  const box = useRef<HTMLDivElement>(null);
  const latest = useRef<MapLayout>(undefined);
  const moved = useRef(false);
  const sizeNow = () => box.current?.getBoundingClientRect();

  const fitMap = () => {
    const size = sizeNow();
    const laid = latest.current;
    if (size === undefined || laid === undefined || size.width === 0) return;
    moved.current = false;
    const bounds = { x: 0, y: 0, width: laid.width, height: laid.height };
    void flow.setViewport(getViewportForBounds(bounds, size.width, size.height, ZOOM.min, 1, `${MARGIN_PX}px`));
  };
  const bringIntoView = (id: string, centre = false) => {
    const size = sizeNow();
    const at = latest.current?.boxes[id];
    if (size === undefined || at === undefined) return;
    const { x, y, zoom } = flow.getViewport();
    const scale = centre ? Math.max(zoom, READABLE) : zoom;
    const [left, top] = [at.x * zoom + x, at.y * zoom + y];
    const [right, bottom] = [left + at.width * zoom, top + at.height * zoom];
    const isInside = left >= 8 && top >= 8 && right <= size.width - 8 && bottom <= size.height - 8;
    if (isInside && scale === zoom) return;
    moved.current = true;
    const fitsDown = at.height * scale <= size.height - 2 * MARGIN_PX;
    void flow.setViewport({
      x: size.width / 2 - (at.x + at.width / 2) * scale,
      y: fitsDown ? size.height / 2 - (at.y + at.height / 2) * scale : MARGIN_PX - at.y * scale,
      zoom: scale,
    });
    bringRowIntoView();
  };
  /** Moves the sheet up or down until the selected row is in sight. */
  const bringRowIntoView = () => {
    const size = sizeNow();
    const at = part === undefined ? undefined : latest.current?.boxes[part];
    if (size === undefined || at === undefined || rowAt === undefined || rowAt > at.height) return;
    const { x, y, zoom } = flow.getViewport();
    const top = (at.y + rowAt) * zoom + y;
    if (top >= ROW_ROOM_PX && top <= size.height - ROW_ROOM_PX) return;
    moved.current = true;
    void flow.setViewport({ x, y: size.height / 2 - (at.y + rowAt) * zoom, zoom });
  };
  const zoomBy = (factor: number) => {
    const size = sizeNow();
    if (size === undefined) return;
    moved.current = true;
    const { x, y, zoom } = flow.getViewport();
    const next = Math.min(ZOOM.max, Math.max(ZOOM.min, zoom * factor));
    const [cx, cy] = [size.width / 2, size.height / 2];
    void flow.setViewport({ x: cx - ((cx - x) * next) / zoom, y: cy - ((cy - y) * next) / zoom, zoom: next });
  };

  // biome-ignore lint/correctness/useExhaustiveDependencies: a new layout alone moves the view
  useLayoutEffect(() => {
    const earlier = latest.current;
    latest.current = layout;
    if (layout === undefined) return;
    const [was, is] = part === undefined || earlier === undefined ? [] : [earlier.boxes[part], layout.boxes[part]];
    const isOpening = was !== undefined && is !== undefined && is.height !== was.height;
    if (!moved.current && !isOpening) return fitMap();
    if (was === undefined || is === undefined) return;
    const { x, y, zoom } = flow.getViewport();
    void flow.setViewport({ x: x + (was.x - is.x) * zoom, y: y + (was.y - is.y) * zoom, zoom });
    moved.current = true;
    if (is.height > was.height) bringIntoView(part as string, true);
  }, [layout]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked for by the count alone
  useEffect(() => {
    if (shown > 0 && part !== undefined) bringIntoView(part, true);
  }, [shown]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when another row is selected
  useEffect(bringRowIntoView, [rowAt]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: it reads only what is held in references
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => {
      if (!moved.current) fitMap();
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);

  return {
    box,
    fitMap,
    bringIntoView,
    zoomBy,
    /** The reader moved the map by hand. */
    onMoved: () => {
      moved.current = true;
    },
  };
}
