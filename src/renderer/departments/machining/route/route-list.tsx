import { Fragment, useRef, useState } from 'react';
import type { OperationId } from '../../../../shared/base/ids.ts';
import type { Process } from '../../../../shared/build/operation.ts';
import { notifyOutcome } from '../../../app/notices.ts';
import type { OperationRow, RouteModel } from '../../../engine/machining/route-models.ts';
import { useEngine, useIsEditable } from '../../../engine/use-engine.ts';
import { classNames } from '../../../kit/class-names.ts';
import { SeverityMark } from '../../../kit/marks.tsx';
import { useRoving } from '../../../kit/roving.ts';
import { AddOperation } from './add-operation.tsx';
import { worstOf } from './worst-of.ts';

interface RouteListProps {
  readonly model: RouteModel;
  readonly picked: OperationId | undefined;
  readonly onPick: (id: OperationId) => void;
  readonly onAdd: (process: Process) => void;
  readonly onRemoved: (next: OperationId | undefined) => void;
}

const heads = ['', 'Operation', 'Tool', 'Speed', 'Feed', 'Power', 'Time', ''] as const;

/** The operations in order under the holding that each is done in; moved by Alt and arrows, or dragged. */
export function RouteList({ model, picked, onPick, onAdd, onRemoved }: RouteListProps) {
  const engine = useEngine();
  const editable = useIsEditable();
  const list = useRef<HTMLDivElement>(null);
  const [dragged, setDragged] = useState<OperationId>();
  const [over, setOver] = useState<number>();
  const { rows } = model;
  const active = rows.findIndex(({ record }) => record.id === picked);
  const roving = useRoving({
    count: rows.length,
    active,
    onActive: (index) => {
      const row = rows[index];
      if (row !== undefined) onPick(row.record.id);
      list.current?.querySelector(`#operation-row-${index}`)?.scrollIntoView({ block: 'nearest' });
    },
    textAt: (index) => rows[index]?.record.name ?? '',
  });
  const moveBefore = async (id: OperationId, before: OperationId | undefined) => {
    if (id === before) return;
    notifyOutcome(await engine.run('operation-move', { operation: id, before }));
  };
  const move = (by: 1 | -1) => {
    const row = rows[active];
    if (row === undefined || active + by < 0 || active + by >= rows.length) return;
    void moveBefore(row.record.id, (by === -1 ? rows[active - 1] : rows[active + 2])?.record.id);
  };
  const remove = async (row: OperationRow) => {
    const next = rows[active + 1] ?? rows[active - 1];
    const outcome = notifyOutcome(await engine.run('operation-remove', { operations: [row.record.id] }));
    if (outcome.ok) onRemoved(next?.record.id);
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    const row = rows[active];
    const by = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : undefined;
    if (editable && event.altKey && by !== undefined) {
      event.preventDefault();
      return move(by);
    }
    if (editable && event.key === 'Delete' && row !== undefined) return void remove(row);
    roving(event);
  };
  const drop = () => {
    if (dragged !== undefined && over !== undefined) void moveBefore(dragged, rows[over]?.record.id);
    setDragged(undefined);
    setOver(undefined);
  };
  return (
    <div className="route">
      <div className="route-head lettering soft" aria-hidden="true">
        {heads.map((head, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: columns stand where they stand
          <span key={i} className={head === 'Time' ? 'route-time' : undefined}>
            {head}
          </span>
        ))}
      </div>
      <div
        ref={list}
        className="route-list"
        role="listbox"
        aria-label="Operations"
        tabIndex={0}
        data-pane-entry
        aria-activedescendant={active < 0 ? undefined : `operation-row-${active}`}
        onKeyDown={onKeyDown}
      >
        {rows.map((row, i) => (
          <Fragment key={row.record.id}>
            {row.begins !== undefined && (
              <div className="route-holding" role="presentation">
                <span className="grow ellipsis">{row.begins.words}</span>
                <span className="soft">{row.begins.minutes}</span>
              </div>
            )}
            <Row
              row={row}
              index={i}
              isActive={i === active}
              isOver={over === i && dragged !== undefined}
              canDrag={editable}
              onPick={() => onPick(row.record.id)}
              onDrag={() => setDragged(row.record.id)}
              onOver={(below) => setOver(below ? i + 1 : i)}
              onDrop={drop}
            />
          </Fragment>
        ))}
      </div>
      {editable && <AddOperation onAdd={onAdd} />}
      {model.unmade.length > 0 && (
        <p className="route-unmade">
          <SeverityMark severity="note" word /> Machined on the drawing, and made by no operation:{' '}
          {model.unmade.map(({ name }) => name).join(', ')}.
        </p>
      )}
      <dl className="swing-zones route-totals" aria-label="Totals">
        {model.totals.map(({ name, value, note }) => (
          <div key={name} title={note}>
            <dt className="lettering soft">{name}</dt>
            <dd className="figure">
              {note !== undefined && <span className="soft">at least </span>}
              {value}
            </dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

interface RowProps {
  readonly row: OperationRow;
  readonly index: number;
  readonly isActive: boolean;
  readonly isOver: boolean;
  readonly canDrag: boolean;
  readonly onPick: () => void;
  readonly onDrag: () => void;
  readonly onOver: (below: boolean) => void;
  readonly onDrop: () => void;
}

function Row({ row, index, isActive, isOver, canDrag, onPick, onDrag, onOver, onDrop }: RowProps) {
  const { record } = row;
  const worst = worstOf(row.findings);
  return (
    <div
      id={`operation-row-${index}`}
      role="option"
      aria-selected={isActive}
      data-operation={record.id}
      className={classNames('route-row', isOver && 'over')}
      draggable={canDrag}
      onClick={onPick}
      onDragStart={(event) => {
        event.dataTransfer.effectAllowed = 'move';
        onDrag();
      }}
      onDragOver={(event) => {
        event.preventDefault();
        const box = event.currentTarget.getBoundingClientRect();
        onOver(event.clientY > box.top + box.height / 2);
      }}
      onDrop={(event) => {
        event.preventDefault();
        onDrop();
      }}
    >
      <span className="figure soft route-step">{row.step}</span>
      <span className="route-what">
        <span className="setup-name ellipsis">{record.name}</span>
        <span className="setup-under ellipsis">
          {record.process}
          {row.makes !== '' && `: ${row.makes}`}
        </span>
      </span>
      <span className="route-cell">
        {row.tool}
        {row.toolMore !== '' && <span className="setup-under">{row.toolMore}</span>}
      </span>
      <span className="route-cell figure">
        {row.rpm ?? row.speed ?? <Unsaid />}
        {row.rpm !== undefined && <span className="setup-under">{row.speed}</span>}
      </span>
      <span className="route-cell figure">
        {row.feed ?? <Unsaid />}
        <span className="setup-under">{row.cuts}</span>
      </span>
      <span className="route-cell figure">
        {row.power ?? <Unsaid />}
        <span className="setup-under">{row.powerOf}</span>
      </span>
      <span className="route-cell figure route-time">{row.time ?? <Unsaid />}</span>
      <span>{worst !== undefined && <SeverityMark severity={worst} />}</span>
    </div>
  );
}

const Unsaid = () => (
  <span className="soft">
    <span aria-hidden="true">—</span>
    <span className="unseen">not known</span>
  </span>
);
