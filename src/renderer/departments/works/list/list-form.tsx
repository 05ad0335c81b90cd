import { useVirtualizer } from '@tanstack/react-virtual';
import { useEffect, useId, useMemo, useRef, useState } from 'react';
import { goTo, usePlace } from '../../../app/place.ts';
import type { PartLink } from '../../../engine/views/links.ts';
import type { Reach } from '../../../engine/views/reach.ts';
import type { PartLine } from '../../../engine/views/summary.ts';
import { useOpened } from '../use-opened.ts';
import { setOpened } from '../works-state.ts';
import { RowWords } from './row-words.tsx';
import { type ListRow, listRows } from './rows.ts';

const ROW_PX = 30;
const PAGE = 12;

interface ListFormProps {
  readonly parts: readonly PartLine[];
  readonly links: readonly PartLink[];
  readonly reach: Reach | undefined;
  readonly onLightKey: (event: React.KeyboardEvent) => boolean;
}

/** The map as a tree: the same parts, links, stations, dimensions and findings, for keys and for the ear. */
export function ListForm({ parts, links, reach, onLightKey }: ListFormProps) {
  const id = useId();
  const { part, subject } = usePlace();
  const opened = useOpened();
  const [unfolded, setUnfolded] = useState<ReadonlySet<string>>(new Set());
  const [folded, setFolded] = useState<ReadonlySet<string>>(new Set());
  const rows = useMemo(
    () => listRows(parts, links, opened, { unfolded, folded }),
    [parts, links, opened, unfolded, folded],
  );
  const [key, setKey] = useState<string | undefined>(subject ?? part);
  const box = useRef<HTMLDivElement>(null);
  const found = rows.findIndex((row) => row.key === key);
  const active = found >= 0 ? found : rows.findIndex((row) => row.key === part);
  const virtual = useVirtualizer({
    count: rows.length,
    getScrollElement: () => box.current,
    estimateSize: () => ROW_PX,
    overscan: 12,
  });
  // What is chosen elsewhere becomes the active row.
  useEffect(() => setKey(subject ?? part), [subject, part]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when another row becomes active
  useEffect(() => {
    if (active >= 0) virtual.scrollToIndex(active, { align: 'auto' });
  }, [active]);

  const lit = useMemo(
    () => (reach === undefined ? undefined : new Set<string>([...reach.parts, ...reach.ids, ...reach.links])),
    [reach],
  );
  const go = (index: number) => {
    const row = rows[Math.min(rows.length - 1, Math.max(0, index))];
    if (row === undefined) return;
    // A link and what is tied to a line are ways elsewhere: they are followed by Enter, not by passing over them.
    if (row.shows.kind === 'part') goTo({ part: row.part, subject: undefined });
    else if (row.shows.kind === 'line') goTo({ part: row.part, subject: row.subject });
    setKey(row.key);
  };
  const unfold = (row: ListRow, open: boolean) => {
    const changed = (set: ReadonlySet<string>, add: boolean) =>
      new Set(add ? [...set, row.key] : [...set].filter((each) => each !== row.key));
    if (row.shows.kind === 'part') setOpened(row.part, open);
    else if (row.shows.kind === 'group') setFolded(changed(folded, !open));
    else setUnfolded(changed(unfolded, open));
  };
  /** Goes where a row points: to the other part or line in this tree, or with a line or part to the Drawing Office. */
  const follow = (row: ListRow) => {
    if (row.shows.kind === 'link') goTo({ part: row.part, subject: undefined });
    else if (row.shows.kind === 'tied') {
      setOpened(row.part, true);
      goTo({ part: row.part, subject: row.subject });
    } else if (row.shows.kind === 'group') unfold(row, row.expanded === false);
    else goTo({ department: 'drawing', part: row.part, subject: row.subject });
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    if (onLightKey(event)) return;
    const row = rows[active];
    if (event.ctrlKey || event.metaKey || event.altKey || row === undefined) return;
    const steps: Readonly<Record<string, number>> = {
      ArrowDown: active + 1,
      ArrowUp: active - 1,
      Home: 0,
      End: rows.length - 1,
      PageDown: active + PAGE,
      PageUp: active - PAGE,
    };
    const step = steps[event.key];
    if (step !== undefined) go(step);
    else if (event.key === 'ArrowRight' && row.expanded === false) unfold(row, true);
    else if (event.key === 'ArrowRight' && row.expanded === true) go(active + 1);
    else if (event.key === 'ArrowLeft' && row.expanded === true) unfold(row, false);
    else if (event.key === 'ArrowLeft') go(rows.findLastIndex((each, i) => i < active && each.level < row.level));
    else if (event.key === ' ' && row.expanded !== undefined) unfold(row, !row.expanded);
    else if (event.key === 'Enter') follow(row);
    else return;
    event.preventDefault();
  };
  return (
    <div
      ref={box}
      className="works-list"
      role="tree"
      aria-label={`Parts and what hangs on what: ${parts.length} parts, ${links.length} links`}
      tabIndex={0}
      data-pane-entry
      aria-activedescendant={active >= 0 ? `${id}${rows[active]?.key}` : undefined}
      onKeyDown={onKeyDown}
    >
      <div className="works-space" role="presentation" style={{ height: virtual.getTotalSize() }}>
        {virtual.getVirtualItems().map(({ index, start }) => {
          const row = rows[index]!;
          const litKey = row.shows.kind === 'link' ? row.shows.link : (row.subject ?? row.part);
          const look = lit === undefined || row.shows.kind === 'group' ? '' : lit.has(litKey) ? ' lit' : ' dim';
          return (
            <div
              key={row.key}
              id={`${id}${row.key}`}
              role="treeitem"
              aria-level={row.level}
              aria-posinset={row.at}
              aria-setsize={row.of}
              aria-expanded={row.expanded}
              aria-selected={index === active}
              tabIndex={-1}
              className={`works-row level-${row.level} is-${row.shows.kind}${look}`}
              style={{ transform: `translateY(${start}px)` }}
              onClick={(event) => {
                const onFold = (event.target as Element).closest('.works-fold') !== null;
                if (onFold && row.expanded !== undefined) unfold(row, !row.expanded);
                go(index);
              }}
              onDoubleClick={() => follow(row)}
            >
              <RowWords row={row} />
            </div>
          );
        })}
      </div>
    </div>
  );
}
