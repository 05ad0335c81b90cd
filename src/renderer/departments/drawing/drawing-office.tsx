import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import type { RecordId } from '../../../shared/build/records.ts';
import { addDimension, addPart } from '../../app/adding.ts';
import { usePlace } from '../../app/place.ts';
import { useEngine, useIsEditable, useView } from '../../engine/use-engine.ts';
import type { PartSheet } from '../../engine/views/part.ts';
import { FindingsPane } from '../../findings/findings-pane.tsx';
import { Button } from '../../kit/button.tsx';
import { Empty } from '../../kit/empty.tsx';
import { Pane } from '../../kit/pane.tsx';
import { Split } from '../../kit/split.tsx';
import { Tabs } from '../../kit/tabs.tsx';
import { PartsPane } from '../../parts/parts-pane.tsx';
import { BodiesBoard } from './bodies/bodies-board.tsx';
import { SolidPane } from './bodies/solid-pane.tsx';
import { DimensionTable } from './grid/dimension-table.tsx';
import { StationTable } from './grid/station-table.tsx';
import { InspectorPane } from './inspector/inspector-pane.tsx';
import { SheetPane } from './sheet/sheet-pane.tsx';
import { StripPane } from './strip/strip-pane.tsx';

/** The Drawing Office: parts, the tables of the selected part, its chain strips, what is behind each number, findings. */
export function DrawingOffice() {
  const { part } = usePlace();
  return (
    <Split
      id="parts"
      direction="across"
      sized="first"
      label="Width of the list of parts"
      initial={212}
      min={160}
      max={480}
    >
      <PartsPane />
      {part === undefined ? <NoPart /> : <PartRoom part={part} />}
    </Split>
  );
}

function NoPart() {
  const engine = useEngine();
  const editable = useIsEditable();
  const isKnown = useView('summary', null) !== undefined;
  if (!isKnown) return <Pane title="Drawing">{null}</Pane>;
  return (
    <Pane title="Drawing">
      <Empty
        title="No part on the board"
        actions={editable && <Button onClick={() => void addPart(engine)}>Add a Part</Button>}
      >
        <p>
          Add the first part of the machine. Then give it stations (its faces, shoulders and centrelines) and the
          dimensions between them; the chain strip shows at once what is missing and what does not agree.
        </p>
      </Empty>
    </Pane>
  );
}

function PartRoom({ part }: { readonly part: string }) {
  // While the next part's sheet is on its way the last one stays: no flicker between parts.
  const fresh = useView('part', { part: part as PartSheet['part']['id'] });
  const last = useRef<PartSheet>(undefined);
  if (fresh !== undefined) last.current = fresh;
  const sheet = last.current;
  if (sheet === undefined) return <Pane title="Drawing">{null}</Pane>;
  return (
    // Until the new sheet is there nothing can be written: it would go to the part that is left.
    <div className="board" inert={sheet.part.id !== part}>
      <Split
        id="inspector"
        direction="across"
        sized="second"
        label="Width of the inspector"
        initial={304}
        min={240}
        max={640}
      >
        <Board sheet={sheet} />
        <Split
          id="findings"
          direction="down"
          sized="second"
          label="Height of the findings"
          initial={300}
          min={120}
          max={900}
        >
          <InspectorPane sheet={sheet} />
          <FindingsPane />
        </Split>
      </Split>
    </div>
  );
}

type TableName = 'dimensions' | 'stations' | 'bodies' | 'sheet' | 'solid';
const tables: readonly TableName[] = ['dimensions', 'stations'];

function Board({ sheet }: { readonly sheet: PartSheet }) {
  const [table, setTable] = useState<TableName>('dimensions');
  const { subject } = usePlace();
  const board = useRef<HTMLDivElement>(null);
  // The tables follow what is selected elsewhere; a picture shows it where it is.
  useEffect(() => {
    const its = subject?.startsWith('dimension:')
      ? 'dimensions'
      : subject?.startsWith('station:')
        ? 'stations'
        : undefined;
    const isBody = subject?.startsWith('body:') === true;
    setTable((now) => (tables.includes(now) ? (isBody ? 'bodies' : (its ?? now)) : now));
  }, [subject]);
  // Each kind of board has its own head, and the tab that was pressed goes with the old one: the focus stays on its heir.
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each change of the board
  useLayoutEffect(() => {
    if (document.activeElement !== document.body) return;
    board.current?.querySelector<HTMLElement>('[role="tab"][aria-selected="true"]')?.focus();
  }, [table]);
  const focusTable = () =>
    requestAnimationFrame(() => board.current?.querySelector<HTMLElement>('[role="grid"]')?.focus());
  const onOpenRow = (id: RecordId) => {
    setTable(id.startsWith('station:') ? 'stations' : 'dimensions');
    focusTable();
  };
  /** Puts the caret into the value of a row that has just been chosen (or is about to appear). */
  const onWriteValue = (id: RecordId) => {
    setTable('dimensions');
    let tries = 20;
    const look = () => {
      const cell = board.current?.querySelector(`[data-row="${CSS.escape(id)}"] [data-column="value"]`);
      if (cell) {
        cell.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true, button: 0 }));
        cell.dispatchEvent(new MouseEvent('dblclick', { bubbles: true }));
      } else if (tries-- > 0) requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  };
  const tabs = (
    <Tabs
      label="Table"
      panel="part-table"
      value={table}
      onChange={setTable}
      tabs={[
        { value: 'dimensions', label: <Counted words="Dimensions" count={sheet.dimensions.length} /> },
        { value: 'stations', label: <Counted words="Stations" count={sheet.stations.length} /> },
        { value: 'bodies', label: 'Bodies' },
        { value: 'sheet', label: 'Sheet' },
        { value: 'solid', label: 'Solid' },
      ]}
    />
  );
  if (table === 'bodies') {
    return (
      <div className="board" ref={board}>
        <BodiesBoard key={sheet.part.id} sheet={sheet} tabs={tabs} />
      </div>
    );
  }
  if (table === 'sheet') {
    return (
      <div className="board" ref={board}>
        <SheetPane key={sheet.part.id} sheet={sheet} tabs={tabs} />
      </div>
    );
  }
  if (table === 'solid') {
    return (
      <div className="board" ref={board}>
        <SolidPane part={sheet.part.id} name={sheet.part.name} beside={tabs} />
      </div>
    );
  }
  return (
    <div className="board" ref={board}>
      <Split
        id="strip"
        direction="down"
        sized="second"
        label="Height of the chain strip"
        initial={320}
        min={140}
        max={900}
      >
        <Pane title={sheet.part.name} beside={tabs}>
          <div id="part-table" role="tabpanel" aria-label={table} className="board-table">
            {table === 'dimensions' ? <Dimensions sheet={sheet} /> : <StationTable key={sheet.part.id} sheet={sheet} />}
          </div>
        </Pane>
        <StripPane sheet={sheet} onOpenRow={onOpenRow} onWriteValue={onWriteValue} />
      </Split>
    </div>
  );
}

function Counted({ words, count }: { readonly words: string; readonly count: number }) {
  return (
    <>
      {words} <span className="figure">{count}</span>
    </>
  );
}

function Dimensions({ sheet }: { readonly sheet: PartSheet }) {
  const engine = useEngine();
  const editable = useIsEditable();
  if (sheet.dimensions.length === 0 && sheet.stations.length === 0) {
    return (
      <Empty
        title="Not drawn yet"
        actions={
          editable && (
            <Button look="main" onClick={() => void addDimension(engine)}>
              Add a Dimension
            </Button>
          )
        }
      >
        <p>
          A dimension runs from one station to another, or is a size: a diameter, a thread, an angle. Write values as
          the drawing does: <span className="figure">62</span>, <span className="figure">1-3/8"</span>, or a formula
          such as <span className="figure">bore of column + 0.2 mm</span>. A block copied from a spreadsheet can be
          pasted here.
        </p>
      </Empty>
    );
  }
  return <DimensionTable key={sheet.part.id} sheet={sheet} />;
}
