import { useVirtualizer, type Virtualizer } from '@tanstack/react-virtual';
import { useEffect, useId, useMemo, useRef, useState } from 'react';
import { askName, useUnnamed } from '../../../app/naming.ts';
import { notify } from '../../../app/notices.ts';
import { markPainted } from '../../../engine/stages.ts';
import { classNames } from '../../../kit/class-names.ts';
import { type Block, blockOf, type Cell, parseTsv, withoutHeads, writeTsv } from './block.ts';
import type { Column } from './column.ts';
import { type Editing, GridRow, useSteadyActs } from './grid-row.tsx';
import { useClipboard } from './use-clipboard.ts';
import { useWritten } from './use-written.ts';

/** Scrolls to a row unless it stands clear of both ends: asking for the scroller's sizes would lay the page out at once. */
function bringIntoView(virtual: Virtualizer<HTMLDivElement, Element>, row: number): void {
  const seen = virtual.range;
  // The first of the rows in view lies under the head.
  if (seen && row > seen.startIndex + 1 && row < seen.endIndex) return;
  virtual.scrollToIndex(row);
}

export interface GridProps<R> {
  readonly label: string;
  readonly columns: readonly Column<R>[];
  readonly rows: readonly R[];
  readonly keyOf: (row: R) => string;
  readonly markOf: (row: R) => React.ReactNode;
  readonly lookOf?: (row: R) => string;
  /** Key of the row that is selected everywhere. */
  readonly selected: string | undefined;
  readonly also: readonly string[];
  readonly onSelect: (key: string | undefined) => void;
  readonly editable: boolean;
  /** Commits a cell; `row` undefined: of the empty last row. @returns why not, in words. */
  readonly onCommit: (row: R | undefined, column: string, text: string) => Promise<string | undefined>;
  readonly onClear: (rows: readonly R[], columns: readonly string[]) => void;
  /** A block pasted at a row (undefined beyond the last) and column. */
  readonly onPaste: (at: number, column: number, block: readonly (readonly string[])[]) => void;
  readonly onInsert: (before: R | undefined) => void;
  readonly onRemove: (rows: readonly R[]) => void;
  /** What the empty last row says. */
  readonly hint: string;
  /** What is written so far in the empty last row. */
  readonly newText?: (column: string) => string | undefined;
}

const NEW = 'new';
const ROW_PX = 28;
const MARK_PX = 28;

/** A table that is written in place. One tab stop; the cell in use is told by `aria-activedescendant`. */
export function Grid<R>(props: GridProps<R>) {
  const { columns, rows, keyOf, selected, onSelect, editable } = props;
  const id = useId();
  const scroller = useRef<HTMLDivElement>(null);
  const [active, setActive] = useState<Cell>({ row: 0, column: 0 });
  const [anchor, setAnchor] = useState<Cell>();
  const [editing, setEditing] = useState<Editing>();
  const written = useWritten();
  const count = rows.length + (editable ? 1 : 0);
  const block: Block = anchor === undefined ? blockOf(active, active) : blockOf(anchor, active);
  const virtual = useVirtualizer({
    count,
    estimateSize: () => ROW_PX,
    getScrollElement: () => scroller.current,
    overscan: 12,
    paddingStart: ROW_PX,
    scrollPaddingStart: ROW_PX * 2,
    scrollPaddingEnd: ROW_PX,
  });
  useEffect(() => markPainted('table'), []);
  const template = useMemo(() => `${MARK_PX}px ${columns.map(trackOf).join(' ')}`, [columns]);
  const width = MARK_PX + columns.reduce((sum, column) => sum + column.width, 0);

  // The selection made elsewhere brings its row into view; the one made here is in view already.
  useEffect(() => {
    const row = rows.findIndex((each) => keyOf(each) === selected);
    if (row < 0) return;
    setActive((now) => (now.row === row ? now : { row, column: now.column }));
    setAnchor(undefined);
    bringIntoView(virtual, row);
  }, [selected, rows, keyOf, virtual]);

  const unnamed = useUnnamed();
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each that was added
  useEffect(() => {
    const row = rows.findIndex((each) => keyOf(each) === unnamed);
    if (row < 0 || unnamed === undefined) return;
    askName(undefined);
    setActive({ row, column: 0 });
    startEditing({ row, column: 0 });
  }, [unnamed, rows]);

  // Commits take their time: what follows them looks at the rows of that moment, not at those of the keystroke.
  const latest = useRef({ rows, count, active });
  latest.current = { rows, count, active };
  const clamp = ({ row, column }: Cell): Cell => ({
    row: Math.min(latest.current.count - 1, Math.max(0, row)),
    column: Math.min(columns.length - 1, Math.max(0, column)),
  });
  const goTo = (cell: Cell, extend = false) => {
    const to = clamp(cell);
    setAnchor(extend ? (anchor ?? active) : undefined);
    setActive(to);
    bringIntoView(virtual, to.row);
    scrollToColumn(scroller.current, columns, to.column);
    const row = latest.current.rows[to.row];
    if (!extend) onSelect(row === undefined ? undefined : keyOf(row));
  };
  /** What stands in a cell: what was written there last, taken already or not. */
  const textOf = (row: R | undefined, column: Column<R>): string =>
    row === undefined ? '' : (written.of(keyOf(row))?.get(column.id) ?? column.text(row));
  const startEditing = (cell: Cell, typed?: string) => {
    const column = columns[cell.column];
    if (!editable || column?.edit === undefined) return;
    const row = rows[cell.row];
    const text = textOf(row, column);
    setEditing({
      ...cell,
      key: row === undefined ? NEW : keyOf(row),
      start: typed ?? text,
      caretAtEnd: typed !== undefined,
      refused: undefined,
    });
  };
  type Then = 'down' | 'up' | 'right' | 'left' | 'stay';
  /** Leaves a cell for the one beside it. @returns where that is; undefined when another place has the keyboard. */
  const leave = (cell: Cell, then: Then): Cell | undefined => {
    setEditing((now) => (now === undefined || now.row !== cell.row || now.column !== cell.column ? now : undefined));
    if (then === 'stay') return undefined;
    scroller.current?.focus({ preventScroll: true });
    const by = { down: [1, 0], up: [-1, 0], right: [0, 1], left: [0, -1] }[then] as [number, number];
    const to = { row: cell.row + by[0], column: cell.column + by[1] };
    goTo(to);
    return clamp(to);
  };
  const finish = async (cell: Editing, text: string, then: Then, isDoubtful: boolean) => {
    const column = columns[cell.column]!;
    const row = rows.find((each) => keyOf(each) === cell.key);
    if (text.trim() === textOf(row, column)) return void leave(cell, then);
    // The cell shows what was written in the next frame; the engine takes it, or sends it back, a little later. A new row
    // is there only then, and what is amiss already stays open until it is judged.
    const isAtOnce = row !== undefined && !isDoubtful;
    const judging = props.onCommit(row, column.id, text.trim());
    // The engine has it before anything is drawn: it works meanwhile.
    await Promise.resolve();
    const takeBack = isAtOnce ? written.write(cell.key, column.id, text.trim()) : undefined;
    const wentTo = isAtOnce ? leave(cell, then) : cell;
    const refused = await judging;
    takeBack?.();
    if (refused === undefined) return isAtOnce ? undefined : void leave(cell, then);
    const { active: now, rows: rowsNow } = latest.current;
    const isStillThere = wentTo !== undefined && now.row === wentTo.row && now.column === wentTo.column;
    const hasKeys = !isAtOnce || document.activeElement === scroller.current;
    // Whoever has gone elsewhere is not called back, but what was written does not go without a word.
    if (then === 'stay' || !isStillThere || !hasKeys) {
      notify({ sentence: `"${text}" was not taken. ${refused}`, isRefusal: true });
      if (!isAtOnce) leave(cell, 'stay');
      return;
    }
    const at = row === undefined ? cell.row : rowsNow.findIndex((each) => keyOf(each) === cell.key);
    if (isAtOnce) goTo({ row: at, column: cell.column });
    setEditing({ ...cell, row: at, start: text, caretAtEnd: true, refused });
  };

  const picked = () => rows.slice(block.top, block.bottom + 1);
  const onKeyDown = (event: React.KeyboardEvent) => {
    if (event.target !== event.currentTarget) return;
    const { row, column } = active;
    const command = event.ctrlKey || event.metaKey;
    const move = (to: Cell) => goTo(to, event.shiftKey);
    switch (event.key) {
      case 'ArrowDown':
        move({ row: command ? count - 1 : row + 1, column });
        break;
      case 'ArrowUp':
        move({ row: command ? 0 : row - 1, column });
        break;
      case 'ArrowRight':
        move({ row, column: command ? columns.length - 1 : column + 1 });
        break;
      case 'ArrowLeft':
        move({ row, column: command ? 0 : column - 1 });
        break;
      case 'Home':
        move({ row: command ? 0 : row, column: 0 });
        break;
      case 'End':
        move({ row: command ? count - 1 : row, column: columns.length - 1 });
        break;
      case 'PageDown':
        move({ row: row + pageOf(scroller.current), column });
        break;
      case 'PageUp':
        move({ row: row - pageOf(scroller.current), column });
        break;
      case 'Enter':
      case 'F2':
        startEditing(active);
        break;
      case 'Escape':
        setAnchor(undefined);
        return;
      case 'Insert':
        if (editable) props.onInsert(rows[row]);
        break;
      case 'Delete':
      case 'Backspace':
        if (!editable) return;
        if (command) props.onRemove(picked());
        else
          props.onClear(
            picked(),
            columns.slice(block.left, block.right + 1).map((each) => each.id),
          );
        break;
      case 'a':
        if (!command) return startTyping(event);
        setAnchor({ row: 0, column: 0 });
        setActive({ row: Math.max(0, rows.length - 1), column: columns.length - 1 });
        break;
      default:
        return startTyping(event);
    }
    event.preventDefault();
  };
  const startTyping = (event: React.KeyboardEvent) => {
    if (event.key.length !== 1 || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    startEditing(active, event.key);
  };
  useClipboard(scroller, {
    copy: () => {
      const taken = columns.slice(block.left, block.right + 1);
      return writeTsv(picked().map((row) => taken.map((column) => column.text(row))));
    },
    paste: (text) => {
      const heads = columns.slice(block.left).map(headsOf);
      const pasted = withoutHeads(parseTsv(text), heads);
      if (editable && pasted.length > 0) props.onPaste(block.top, block.left, pasted);
    },
  });

  const acts = useSteadyActs({
    press: goTo,
    open: startEditing,
    finish: (cell, text, then, isDoubtful) => void finish(cell, text, then, isDoubtful),
    cancel: () => {
      setEditing(undefined);
      scroller.current?.focus({ preventScroll: true });
    },
  });
  return (
    <div
      ref={scroller}
      className="grid"
      role="grid"
      aria-label={props.label}
      aria-rowcount={count + 1}
      aria-colcount={columns.length + 1}
      aria-multiselectable="true"
      aria-readonly={!editable}
      tabIndex={0}
      data-pane-entry
      aria-activedescendant={`${id}-${active.row}-${active.column}`}
      onKeyDown={onKeyDown}
      onScroll={(event) => markShifted(event.currentTarget)}
    >
      <div className="grid-space" role="presentation" style={{ height: virtual.getTotalSize(), width }}>
        <div className="grid-head" role="row" aria-rowindex={1} style={{ gridTemplateColumns: template }}>
          <div role="columnheader" aria-colindex={1} className="grid-title">
            <span className="unseen">Findings</span>
          </div>
          {columns.map((column, c) => (
            <div
              key={column.id}
              role="columnheader"
              aria-colindex={c + 2}
              title={column.about}
              className={classNames(
                'grid-title',
                'lettering',
                column.figure === 'right' && 'right',
                c === 0 && 'pinned',
              )}
            >
              <span className="ellipsis">{column.title}</span>
            </div>
          ))}
        </div>
        {virtual.getVirtualItems().map(({ index, start }) => {
          const row = rows[index];
          const key = row === undefined ? NEW : keyOf(row);
          const isInBlock = index >= block.top && index <= block.bottom;
          return (
            <GridRow
              key={key}
              idPrefix={id}
              rowKey={key}
              row={row}
              index={index}
              start={start}
              columns={columns}
              template={template}
              markOf={props.markOf}
              lookOf={props.lookOf}
              selected={key === selected}
              also={props.also.includes(key)}
              active={active.row === index ? active.column : undefined}
              blockLeft={isInBlock ? block.left : undefined}
              blockRight={isInBlock ? block.right : undefined}
              blockShown={anchor !== undefined}
              editing={editing?.key === key ? editing : undefined}
              written={written.of(key)}
              hint={props.hint}
              halfWritten={
                row === undefined ? columns.map((column) => props.newText?.(column.id) ?? '').join('\n') : ''
              }
              acts={acts}
            />
          );
        })}
      </div>
    </div>
  );
}

const trackOf = (column: { readonly width: number; readonly grows?: boolean }): string =>
  column.grows === true ? `minmax(${column.width}px, 1fr)` : `${column.width}px`;

/** What a spreadsheet may call a column: its title, either half of it, or its short name. */
const headsOf = (column: { readonly id: string; readonly title: string }): readonly string[] =>
  [column.id, column.title, ...column.title.split('/')].map((head) => head.trim().toLowerCase());

const pageOf = (scroller: HTMLElement | null): number =>
  Math.max(1, Math.floor((scroller?.clientHeight ?? ROW_PX * 10) / ROW_PX) - 2);

/** Pinned cells stick only while there is something to stick out of: each that does is painted by itself. */
function markShifted(scroller: HTMLElement): void {
  scroller.toggleAttribute('data-shifted', scroller.scrollLeft > 0);
}

/** Brings a column into view beside the pinned first one. */
function scrollToColumn<R>(scroller: HTMLElement | null, columns: readonly Column<R>[], column: number): void {
  if (scroller === null) return;
  if (column === 0) {
    scroller.scrollLeft = 0;
    return;
  }
  const pinned = MARK_PX + (columns[0]?.width ?? 0);
  const left = MARK_PX + columns.slice(0, column).reduce((sum, each) => sum + each.width, 0);
  const right = left + (columns[column]?.width ?? 0);
  if (left - pinned < scroller.scrollLeft) scroller.scrollLeft = left - pinned;
  else if (right > scroller.scrollLeft + scroller.clientWidth) scroller.scrollLeft = right - scroller.clientWidth;
}
