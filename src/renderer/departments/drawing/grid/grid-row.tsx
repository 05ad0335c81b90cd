import { memo, useRef } from 'react';
import { classNames } from '../../../kit/class-names.ts';
import type { Cell } from './block.ts';
import { CellEditor, ChoiceEditor } from './cell-editor.tsx';
import { choiceOf } from './choice-of.ts';
import type { Column } from './column.ts';
import type { WrittenRow } from './use-written.ts';

export interface Editing extends Cell {
  /** The row's key, or `new`: rows may come and go above it while a commit is on its way. */
  readonly key: string;
  readonly start: string;
  readonly caretAtEnd: boolean;
  readonly refused: string | undefined;
}

type Then = 'down' | 'up' | 'right' | 'left' | 'stay';

/** What the cells of a row set going. */
export interface RowActs {
  readonly press: (cell: Cell, extend: boolean) => void;
  readonly open: (cell: Cell) => void;
  /** `isDoubtful`: something was said against the text while it was written. */
  readonly finish: (cell: Editing, text: string, then: Then, isDoubtful: boolean) => void;
  readonly cancel: () => void;
}

/** The same functions for as long as the table stands: a row is drawn anew only when what it shows has changed. */
export function useSteadyActs(acts: RowActs): RowActs {
  const latest = useRef(acts);
  latest.current = acts;
  const steady = useRef<RowActs>(undefined);
  steady.current ??= {
    press: (cell, extend) => latest.current.press(cell, extend),
    open: (cell) => latest.current.open(cell),
    finish: (cell, text, then, isDoubtful) => latest.current.finish(cell, text, then, isDoubtful),
    cancel: () => latest.current.cancel(),
  };
  return steady.current;
}

interface GridRowProps<R> {
  readonly idPrefix: string;
  readonly rowKey: string;
  /** Undefined: the empty last row. */
  readonly row: R | undefined;
  readonly index: number;
  readonly start: number;
  readonly columns: readonly Column<R>[];
  readonly template: string;
  readonly markOf: (row: R) => React.ReactNode;
  readonly lookOf: ((row: R) => string) | undefined;
  readonly selected: boolean;
  readonly also: boolean;
  /** Column of the cell in use, when it is in this row. */
  readonly active: number | undefined;
  /** Columns of the marked block, when it crosses this row. */
  readonly blockLeft: number | undefined;
  readonly blockRight: number | undefined;
  /** The block is more than the cell in use. */
  readonly blockShown: boolean;
  readonly editing: Editing | undefined;
  /** Texts that were written and are not taken yet. */
  readonly written: WrittenRow | undefined;
  readonly hint: string;
  /** What is written so far in the empty last row, a line for each column. */
  readonly halfWritten: string;
  readonly acts: RowActs;
}

function PlainGridRow<R>(props: GridRowProps<R>) {
  const { rowKey, row, index, start, columns, template, editing, acts } = props;
  const halfWritten = props.halfWritten.split('\n');
  return (
    <div
      role="row"
      aria-rowindex={index + 2}
      aria-selected={props.selected}
      data-row={rowKey}
      className={classNames(
        'grid-row',
        props.selected && 'selected',
        props.also && 'also',
        row !== undefined && props.lookOf?.(row),
        row === undefined && 'new',
      )}
      style={{
        gridTemplateColumns: template,
        transform: `translateY(${start}px)`,
        zIndex: editing === undefined ? undefined : 3,
      }}
    >
      <div role="gridcell" aria-colindex={1} className="grid-cell grid-mark">
        {row !== undefined && props.markOf(row)}
      </div>
      {columns.map((column, c) => {
        const isActive = props.active === c;
        const isEdited = editing !== undefined && editing.column === c;
        const isInBlock = props.blockLeft !== undefined && c >= props.blockLeft && c <= (props.blockRight ?? -1);
        const written = props.written?.get(column.id);
        const problem = row === undefined || written !== undefined ? undefined : column.problem?.(row);
        const aside = row === undefined ? undefined : column.aside?.(row);
        return (
          <div
            key={column.id}
            id={`${props.idPrefix}-${index}-${c}`}
            role="gridcell"
            aria-colindex={c + 2}
            aria-readonly={column.edit === undefined ? true : undefined}
            aria-selected={isInBlock}
            data-column={column.id}
            title={isEdited ? undefined : (problem ?? aside ?? cutText(column, row))}
            className={classNames(
              'grid-cell',
              column.figure !== undefined && 'figure',
              column.figure === 'right' && 'right',
              column.edit === undefined && 'computed',
              c === 0 && 'pinned',
              isActive && 'active',
              isEdited && 'edited',
              props.blockShown && isInBlock && 'in-block',
              problem !== undefined && 'wrong',
            )}
            onPointerDown={(event) => {
              if (event.button !== 0 || isEdited) return;
              acts.press({ row: index, column: c }, event.shiftKey);
            }}
            onDoubleClick={() => !isEdited && acts.open({ row: index, column: c })}
          >
            {isEdited ? (
              <EditedCell column={column} row={row} editing={editing} acts={acts} />
            ) : row === undefined ? (
              <NewCell text={halfWritten[c] ?? ''} hint={c === 0 ? props.hint : ''} />
            ) : (
              <span className="ellipsis">{written ?? column.show?.(row) ?? column.text(row)}</span>
            )}
            {problem !== undefined && !isEdited && <span className="unseen">, {problem}</span>}
          </div>
        );
      })}
    </div>
  );
}

/** One row of a table. */
export const GridRow = memo(PlainGridRow) as typeof PlainGridRow;

interface EditedCellProps<R> {
  readonly column: Column<R>;
  readonly row: R | undefined;
  readonly editing: Editing;
  readonly acts: RowActs;
}

function EditedCell<R>({ column, row, editing, acts }: EditedCellProps<R>) {
  const done = (text: string, then: Then, isDoubtful = false) => acts.finish(editing, text, then, isDoubtful);
  if (column.edit?.choices !== undefined) {
    return (
      <ChoiceEditor
        title={column.title}
        choices={column.edit.choices}
        start={choiceOf(column.edit.choices, editing.start, row === undefined ? '' : column.text(row))}
        onDone={done}
        onCancel={acts.cancel}
      />
    );
  }
  return (
    <CellEditor
      column={column}
      row={row}
      start={editing.start}
      caretAtEnd={editing.caretAtEnd}
      refused={editing.refused}
      onDone={done}
      onCancel={acts.cancel}
    />
  );
}

function NewCell({ text, hint }: { readonly text: string; readonly hint: string }) {
  return text === '' ? <span className="soft">{hint}</span> : <span className="ellipsis">{text}</span>;
}

/** Mean advance of a letter at 14 px: a text that may be cut off can be read in full in its tip. */
const LETTER_PX = 6.5;
function cutText<R>(column: Column<R>, row: R | undefined): string | undefined {
  const text = row === undefined ? '' : column.text(row);
  return text.length * LETTER_PX > column.width - 16 ? text : undefined;
}
