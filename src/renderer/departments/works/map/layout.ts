import { Graph, layout as layDagre } from '@dagrejs/dagre';
import { layFolded } from './folded-layout.ts';
import { joinToBoxes } from './join-to-boxes.ts';
import type { Box, LayoutRequest, MapLayout, Point } from './places.ts';

const GAP = 24;
const RANK_GAP = 44;
const LABEL_HEIGHT = 18;
/** Width to height that blocks are set to: that of the room that a window leaves for the map. */
const ASPECT = 1.4;
// Beyond this the exact layout takes many seconds; blocks are folded instead.
const EXACT_UP_TO = 160;

/**
 * Lays out parts so that what is named stands above what names it. Parts that hang together form a block; the blocks,
 * and last the parts that hang on nothing, are set in rows. Same request, same layout.
 */
export function layoutMap(request: LayoutRequest): MapLayout {
  const blocks = blocksOf(request);
  const single = blocks.filter(({ nodes }) => nodes.length === 1);
  const tied = blocks
    .filter(({ nodes }) => nodes.length > 1)
    .map((block) => (block.nodes.length > EXACT_UP_TO ? layFolded(block, ASPECT) : layBlock(block)));
  const laid = [...tied, ...(single.length > 0 ? [layRows(single.map(({ nodes }) => nodes[0]!))] : [])];
  return setInRows(laid);
}

function blocksOf({ nodes, lines }: LayoutRequest): readonly LayoutRequest[] {
  const parent = new Map(nodes.map(({ id }) => [id, id]));
  const rootOf = (id: string): string => {
    let root = id;
    while (parent.get(root) !== root) root = parent.get(root)!;
    for (let at = id; at !== root; ) {
      const next = parent.get(at)!;
      parent.set(at, root);
      at = next;
    }
    return root;
  };
  const known = lines.filter(({ from, to }) => parent.has(from) && parent.has(to));
  for (const { from, to } of known) parent.set(rootOf(to), rootOf(from));
  const blocks = new Map<
    string,
    { nodes: LayoutRequest['nodes'][number][]; lines: LayoutRequest['lines'][number][] }
  >();
  for (const node of nodes) {
    const root = rootOf(node.id);
    const block = blocks.get(root);
    if (block === undefined) blocks.set(root, { nodes: [node], lines: [] });
    else block.nodes.push(node);
  }
  for (const line of known) blocks.get(rootOf(line.from))!.lines.push(line);
  return [...blocks.values()];
}

/** What the library leaves on a line. */
interface Drawn {
  readonly points?: readonly Point[];
  readonly x?: number;
  readonly y?: number;
}

function layBlock({ nodes, lines }: LayoutRequest): MapLayout {
  const graph = new Graph({ multigraph: true });
  graph.setGraph({
    rankdir: 'TB',
    nodesep: GAP,
    ranksep: RANK_GAP,
    edgesep: 8,
    ranker: 'network-simplex',
    acyclicer: 'greedy',
  });
  for (const { id, width, height } of nodes) graph.setNode(id, { width, height });
  for (const { id, from, to, labelWidth } of lines) {
    const label = labelWidth > 0 ? { width: labelWidth, height: LABEL_HEIGHT, labelpos: 'c' as const } : {};
    graph.setEdge(from, to, { ...label }, id);
  }
  layDagre(graph);
  const boxes: Record<string, Box> = {};
  for (const { id, width, height } of nodes) {
    const { x = 0, y = 0 } = graph.node(id);
    boxes[id] = { x: x - width / 2, y: y - height / 2, width, height };
  }
  const courses = lines.map((line) => {
    const { points = [], x, y }: Drawn = graph.edge(line.from, line.to, line.id);
    const label = line.labelWidth > 0 && x !== undefined && y !== undefined ? { x, y } : undefined;
    return { ...line, between: points.slice(1, -1).map((point) => ({ x: point.x, y: point.y })), label };
  });
  const drawn = joinToBoxes(courses, boxes);
  const { width = 0, height = 0 } = graph.graph();
  return { boxes, lines: drawn, width, height };
}

/** Boxes in rows, as many in each as the aspect asks for. */
function layRows(nodes: LayoutRequest['nodes']): MapLayout {
  const area = nodes.reduce((sum, { width, height }) => sum + (width + GAP) * (height + GAP), 0);
  const room = Math.max(Math.sqrt(area * ASPECT), ...nodes.map(({ width }) => width));
  const boxes: Record<string, Box> = {};
  let [x, y, rowHeight, widest] = [0, 0, 0, 0];
  for (const { id, width, height } of nodes) {
    if (x > 0 && x + width > room) [x, y, rowHeight] = [0, y + rowHeight + GAP, 0];
    boxes[id] = { x, y, width, height };
    widest = Math.max(widest, x + width);
    x += width + GAP;
    rowHeight = Math.max(rowHeight, height);
  }
  return { boxes, lines: {}, width: widest, height: y + rowHeight };
}

function setInRows(blocks: readonly MapLayout[]): MapLayout {
  const gap = 2 * GAP;
  const area = blocks.reduce((sum, { width, height }) => sum + (width + gap) * (height + gap), 0);
  const room = Math.max(Math.sqrt(area * ASPECT), ...blocks.map(({ width }) => width));
  const boxes: Record<string, Box> = {};
  const lines: Record<string, MapLayout['lines'][string]> = {};
  let [x, y, rowHeight, widest] = [0, 0, 0, 0];
  for (const block of blocks) {
    if (x > 0 && x + block.width > room) [x, y, rowHeight] = [0, y + rowHeight + gap, 0];
    const moved = <P extends Point>(point: P): P => ({ ...point, x: point.x + x, y: point.y + y });
    for (const [id, box] of Object.entries(block.boxes)) boxes[id] = moved(box);
    for (const [id, { points, label }] of Object.entries(block.lines)) {
      lines[id] = { points: points.map(moved), label: label === undefined ? undefined : moved(label) };
    }
    widest = Math.max(widest, x + block.width);
    x += block.width + gap;
    rowHeight = Math.max(rowHeight, block.height);
  }
  return { boxes, lines, width: widest, height: y + rowHeight };
}
