import { ReactFlow, ReactFlowProvider, useStore } from '@xyflow/react';
import '@xyflow/react/dist/base.css';
import { useMemo, useState } from 'react';
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
import { ArrowHead, LinkLine } from './link-edge.tsx';
import { LinkTip } from './link-tip.tsx';
import { type Direction, neighbour } from './neighbour.ts';
import { nodeElementId, PartBlock } from './part-node.tsx';
import { rowMiddle, sheetOrder, sheetRows } from './sheet-rows.ts';
import { useKeptEdges, useKeptNodes } from './use-kept.ts';
import { useLayout } from './use-layout.ts';
import { useMapView, ZOOM } from './use-map-view.ts';
import { spokenPart } from './words.ts';

const nodeTypes = { part: PartBlock };
const edgeTypes = { link: LinkLine };
const hidden = { hideAttribution: true };
/** Below this a title block is too small to read: only its name and gravest mark are shown, larger. */
const FAR = 0.62;

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
  const edges = useKeptEdges(useMemo(() => (scene === undefined ? [] : edgesOf(scene)), [scene]));
  const [hovered, setHovered] = useState<{ readonly edge: LinkEdge; readonly x: number; readonly y: number }>();
  const [ready, setReady] = useState(false);
  const sheet = part === undefined || opened[part] === undefined ? undefined : sheetRows(opened[part]);
  const rowAt = sheet === undefined || subject === undefined ? undefined : rowMiddle(sheet, subject);
  const view = useMapView({ layout: ready ? layout : undefined, part, rowAt, shown });
  const isFar = useStore((state) => state.transform[2] < FAR);

  const goByKey = (way: Direction) => {
    if (layout === undefined) return;
    if (sheet !== undefined && (way === 'up' || way === 'down')) {
      // An opened part is walked row by row; beyond its ends the next part follows.
      const order = sheetOrder(sheet);
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
        onInit={() => setReady(true)}
        onNodeClick={(_event, node) => goTo({ part: node.data.part.id, subject: undefined })}
        onNodeDoubleClick={(_event, node) => goTo({ department: 'drawing', part: node.data.part.id })}
        onEdgeMouseEnter={(event, edge) => setHovered({ edge, x: event.clientX, y: event.clientY })}
        onEdgeMouseLeave={() => setHovered(undefined)}
        onMoveStart={(event) => {
          setHovered(undefined);
          // Without an event it is the program that moves the view.
          if (event !== null) view.onMoved();
        }}
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
