import { getViewportForBounds, ReactFlow, ReactFlowProvider, useReactFlow, useStore } from '@xyflow/react';
import '@xyflow/react/dist/base.css';
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { PartId } from '../../../../shared/base/ids.ts';
import { goTo, usePlace } from '../../../app/place.ts';
import type { PartLink } from '../../../engine/views/links.ts';
import type { Reach } from '../../../engine/views/reach.ts';
import type { PartLine } from '../../../engine/views/summary.ts';
import { announce } from '../../../kit/announcer.tsx';
import { IconButton } from '../../../kit/button.tsx';
import { FitIcon, ZoomInIcon, ZoomOutIcon } from '../../../kit/icons.tsx';
import { useOpened } from '../use-opened.ts';
import { isOpened, setOpened } from '../works-state.ts';
import { edgesOf, type LinkEdge, layoutRequest, nodesOf, type PartNode } from './graph.ts';
import type { MapLayout } from './layout.ts';
import { ArrowHead, LinkLine } from './link-edge.tsx';
import { LinkTip } from './link-tip.tsx';
import { type Direction, neighbour } from './neighbour.ts';
import { nodeElementId, PartBlock } from './part-node.tsx';
import { sheetOrder, sheetRows } from './sheet-rows.ts';
import { useKeptNodes } from './use-kept-nodes.ts';
import { useLayout } from './use-layout.ts';
import { spokenPart } from './words.ts';

const nodeTypes = { part: PartBlock };
const edgeTypes = { link: LinkLine };
const hidden = { hideAttribution: true };
const ZOOM = { min: 0.08, max: 2, step: 1.25 };
/** Below this a title block is too small to read: only its name and gravest mark are shown, larger. */
const FAR = 0.55;

interface MapProps {
  readonly parts: readonly PartLine[];
  readonly links: readonly PartLink[];
  readonly reach: Reach | undefined;
  /** Counts up when the selection is to be brought into view. */
  readonly shown: number;
  readonly onLightKey: (event: React.KeyboardEvent) => boolean;
}

export const DependencyMap = (props: MapProps) => (
  <ReactFlowProvider>
    <MapSheet {...props} />
  </ReactFlowProvider>
);

function MapSheet({ parts, links, reach, shown, onLightKey }: MapProps) {
  const { part, subject } = usePlace();
  const opened = useOpened();
  const request = useMemo(
    () => (parts.length === 0 ? undefined : layoutRequest(parts, links, opened)),
    [parts, links, opened],
  );
  const { layout, problem } = useLayout(request);
  const scene = useMemo(
    () => layout && { parts, links, opened, layout, reach, part, subject },
    [parts, links, opened, layout, reach, part, subject],
  );
  const nodes = useKeptNodes(useMemo(() => (scene === undefined ? [] : nodesOf(scene)), [scene]));
  const edges = useMemo(() => (scene === undefined ? [] : edgesOf(scene)), [scene]);
  const [hovered, setHovered] = useState<{ readonly edge: LinkEdge; readonly x: number; readonly y: number }>();
  const view = useMapView(layout, part, shown);
  const isFar = useStore((state) => state.transform[2] < FAR);

  const goByKey = (way: Direction) => {
    if (layout === undefined) return;
    const sheet = part === undefined ? undefined : opened[part];
    if (sheet !== undefined && (way === 'up' || way === 'down')) {
      // An opened part is walked row by row; beyond its ends the next part follows.
      const order = sheetOrder(sheetRows(sheet));
      const at = subject === undefined ? -1 : order.indexOf(subject as never);
      const next = order[at + (way === 'down' ? 1 : -1)];
      if (next !== undefined) return goTo({ subject: next });
      if (at >= 0 && way === 'up') return goTo({ subject: undefined });
    }
    const next = part === undefined ? parts[0]?.id : neighbour(layout.boxes, part, way);
    if (next === undefined) return;
    goTo({ part: next as PartId });
    view.bringIntoView(next);
    const line = parts.find(({ id }) => id === next);
    if (line !== undefined) announce(spokenPart(line, links));
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    const way = arrows[event.key];
    if (event.target !== event.currentTarget || event.ctrlKey || event.metaKey || event.altKey) return;
    if (onLightKey(event)) return;
    if (way !== undefined) goByKey(way);
    else if (event.key === '+' || event.key === '=') view.zoomBy(ZOOM.step);
    else if (event.key === '-') view.zoomBy(1 / ZOOM.step);
    else if (event.key === '0') view.fitMap();
    else if (event.key === ' ' && part !== undefined) setOpened(part, !isOpened(part));
    else if (event.key === 'Enter' && part !== undefined) goTo({ department: 'drawing' });
    else return;
    event.preventDefault();
  };
  return (
    <div className="works-map" ref={view.box}>
      <ReactFlow<PartNode, LinkEdge>
        nodes={nodes as PartNode[]}
        edges={edges as LinkEdge[]}
        nodeTypes={nodeTypes}
        edgeTypes={edgeTypes}
        className={isFar ? 'far' : ''}
        onlyRenderVisibleElements
        nodesDraggable={false}
        nodesConnectable={false}
        nodesFocusable={false}
        edgesFocusable={false}
        elementsSelectable={false}
        disableKeyboardA11y
        deleteKeyCode={null}
        selectionKeyCode={null}
        multiSelectionKeyCode={null}
        panActivationKeyCode={null}
        zoomActivationKeyCode={null}
        zoomOnDoubleClick={false}
        minZoom={ZOOM.min}
        maxZoom={ZOOM.max}
        proOptions={hidden}
        onNodeClick={(_event, node) => goTo({ part: node.data.part.id, subject: undefined })}
        onNodeDoubleClick={(_event, node) => goTo({ department: 'drawing', part: node.data.part.id })}
        onEdgeMouseEnter={(event, edge) => setHovered({ edge, x: event.clientX, y: event.clientY })}
        onEdgeMouseLeave={() => setHovered(undefined)}
        onMoveStart={() => setHovered(undefined)}
        tabIndex={0}
        data-pane-entry
        aria-label={`Dependency map: ${parts.length} parts, ${links.length} links. The list form says the same.`}
        aria-activedescendant={
          part !== undefined && layout?.boxes[part] !== undefined ? nodeElementId(part) : undefined
        }
        onKeyDown={onKeyDown}
      >
        <ArrowHead />
      </ReactFlow>
      {layout === undefined && <p className="works-wait">{problem ?? 'Laying out the parts…'}</p>}
      {hovered !== undefined && <LinkTip edge={hovered.edge} at={hovered} parts={parts} />}
      <div className="works-zoom">
        <IconButton label="Farther" keys="−" icon={<ZoomOutIcon />} onClick={() => view.zoomBy(1 / ZOOM.step)} />
        <IconButton label="Closer" keys="+" icon={<ZoomInIcon />} onClick={() => view.zoomBy(ZOOM.step)} />
        <IconButton label="Fit the map" keys="0" icon={<FitIcon />} onClick={view.fitMap} />
      </div>
    </div>
  );
}

const arrows: Readonly<Record<string, Direction>> = {
  ArrowUp: 'up',
  ArrowDown: 'down',
  ArrowLeft: 'left',
  ArrowRight: 'right',
};

/** Fits the first layout; holds the selected part still through later ones; brings what is chosen into view. */
function useMapView(layout: MapLayout | undefined, part: string | undefined, shown: number) {
  const flow = useReactFlow();
  const box = useRef<HTMLDivElement>(null);
  const before = useRef<MapLayout>(undefined);
  const fitMap = () => {
    const size = box.current?.getBoundingClientRect();
    const laid = before.current;
    if (size === undefined || laid === undefined) return;
    const bounds = { x: 0, y: 0, width: laid.width, height: laid.height };
    void flow.setViewport(getViewportForBounds(bounds, size.width, size.height, ZOOM.min, 1, '20px'));
  };
  const bringIntoView = (id: string, centre = false) => {
    const size = box.current?.getBoundingClientRect();
    const at = before.current?.boxes[id];
    if (size === undefined || at === undefined) return;
    const { x, y, zoom } = flow.getViewport();
    const scale = centre ? Math.max(zoom, 0.8) : zoom;
    const left = at.x * zoom + x;
    const top = at.y * zoom + y;
    const inside =
      left >= 8 && top >= 8 && left + at.width * zoom <= size.width - 8 && top + at.height * zoom <= size.height - 8;
    if (inside && scale === zoom) return;
    const fitsDown = at.height * scale <= size.height - 24;
    void flow.setViewport({
      x: size.width / 2 - (at.x + at.width / 2) * scale,
      y: fitsDown ? size.height / 2 - (at.y + at.height / 2) * scale : 12 - at.y * scale,
      zoom: scale,
    });
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new layout alone moves the view
  useLayoutEffect(() => {
    const earlier = before.current;
    before.current = layout;
    if (layout === undefined) return;
    if (earlier === undefined) return fitMap();
    const [was, is] = part === undefined ? [] : [earlier.boxes[part], layout.boxes[part]];
    if (was === undefined || is === undefined) return;
    const { x, y, zoom } = flow.getViewport();
    void flow.setViewport({ x: x + (was.x - is.x) * zoom, y: y + (was.y - is.y) * zoom, zoom });
    if (is.height > was.height) bringIntoView(part as string);
  }, [layout]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked for by the count alone
  useEffect(() => {
    if (shown > 0 && part !== undefined) bringIntoView(part, true);
  }, [shown]);
  const zoomBy = (factor: number) => {
    const size = box.current?.getBoundingClientRect();
    if (size === undefined) return;
    const { x, y, zoom } = flow.getViewport();
    const next = Math.min(ZOOM.max, Math.max(ZOOM.min, zoom * factor));
    const [cx, cy] = [size.width / 2, size.height / 2];
    void flow.setViewport({ x: cx - ((cx - x) * next) / zoom, y: cy - ((cy - y) * next) / zoom, zoom: next });
  };
  return { box, fitMap, bringIntoView, zoomBy };
}
