import { useRef } from 'react';
import type { PartNode } from './graph.ts';

const sameData = (a: PartNode['data'], b: PartNode['data']): boolean =>
  a.part === b.part &&
  a.look === b.look &&
  a.selected === b.selected &&
  a.subject === b.subject &&
  a.lit === b.lit &&
  sameRows(a, b);

// Rows are made anew each time; what they show keeps its identity while it does not change.
const sameRows = ({ rows: a }: PartNode['data'], { rows: b }: PartNode['data']): boolean =>
  a === b ||
  (a?.length === b?.length &&
    a?.every((row, i) => {
      const other = b?.[i];
      if (row.kind === 'head') return other?.kind === 'head' && row.title === other.title;
      return other?.kind === 'pair' && row.dimension === other.dimension && row.station === other.station;
    }) === true);

const same = (a: PartNode | undefined, b: PartNode): a is PartNode =>
  a !== undefined &&
  a.position.x === b.position.x &&
  a.position.y === b.position.y &&
  a.width === b.width &&
  a.height === b.height &&
  sameData(a.data, b.data);

/** Nodes that show what they showed keep their identity, so that only what changed is drawn anew. */
export function useKeptNodes(nodes: readonly PartNode[]): readonly PartNode[] {
  const known = useRef<ReadonlyMap<string, PartNode>>(new Map());
  const list = useRef<readonly PartNode[]>([]);
  const kept = nodes.map((node) => {
    const earlier = known.current.get(node.id);
    return same(earlier, node) ? earlier : node;
  });
  if (kept.length !== list.current.length || kept.some((node, i) => node !== list.current[i])) {
    list.current = kept;
    known.current = new Map(kept.map((node) => [node.id, node]));
  }
  return list.current;
}
