import { useRef } from 'react';
import type { LinkEdge, PartNode } from './graph.ts';

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

const sameNode = (a: PartNode, b: PartNode): boolean =>
  a.position.x === b.position.x &&
  a.position.y === b.position.y &&
  a.width === b.width &&
  a.height === b.height &&
  sameData(a.data, b.data);

const sameEdge = ({ data: a }: LinkEdge, { data: b }: LinkEdge): boolean =>
  a !== undefined &&
  b !== undefined &&
  a.link === b.link &&
  a.path === b.path &&
  a.look === b.look &&
  a.near === b.near &&
  a.label?.x === b.label?.x &&
  a.label?.y === b.label?.y &&
  a.pairs.length === b.pairs.length &&
  a.pairs.every((pair, i) => pair === b.pairs[i]);

function useKept<T extends { readonly id: string }>(items: readonly T[], same: (a: T, b: T) => boolean): readonly T[] {
  const known = useRef<ReadonlyMap<string, T>>(new Map());
  const list = useRef<readonly T[]>([]);
  const kept = items.map((item) => {
    const earlier = known.current.get(item.id);
    return earlier !== undefined && same(earlier, item) ? earlier : item;
  });
  if (kept.length !== list.current.length || kept.some((item, i) => item !== list.current[i])) {
    list.current = kept;
    known.current = new Map(kept.map((item) => [item.id, item]));
  }
  return list.current;
}

/** Nodes that show what they showed keep their identity, so that only what changed is drawn anew. */
export const useKeptNodes = (nodes: readonly PartNode[]): readonly PartNode[] => useKept(nodes, sameNode);

/** The same for lines. */
export const useKeptEdges = (edges: readonly LinkEdge[]): readonly LinkEdge[] => useKept(edges, sameEdge);
