import { type ReactNode, useRef } from 'react';
import type { BodyId } from '../../../../shared/base/ids.ts';
import type { ShapeType } from '../../../../shared/build/body.ts';
import { notifyOutcome } from '../../../app/notices.ts';
import { goTo, usePlace } from '../../../app/place.ts';
import { useEngine, useIsEditable } from '../../../engine/use-engine.ts';
import type { BodyRow } from '../../../engine/views/bodies.ts';
import { Button } from '../../../kit/button.tsx';
import { classNames } from '../../../kit/class-names.ts';
import { Empty } from '../../../kit/empty.tsx';
import { SeverityMark } from '../../../kit/marks.tsx';
import { useRoving } from '../../../kit/roving.ts';
import { shapeNames } from './field-words.ts';

interface BodiesListProps {
  readonly rows: readonly BodyRow[];
  readonly onNew: (type: ShapeType) => void;
  readonly onOpen: (row: BodyRow) => void;
}

/** The bodies of a part in the order in which they act. */
export function BodiesList({ rows, onNew, onOpen }: BodiesListProps) {
  const engine = useEngine();
  const editable = useIsEditable();
  const { subject } = usePlace();
  const list = useRef<HTMLDivElement>(null);
  const active = rows.findIndex(({ record }) => record.id === subject);
  const roving = useRoving({
    count: rows.length,
    active,
    onActive: (index) => {
      goTo({ subject: rows[index]?.record.id });
      list.current?.querySelectorAll('[role="option"]')[index]?.scrollIntoView({ block: 'nearest' });
    },
    textAt: (index) => rows[index]?.record.name ?? '',
  });
  const remove = async (row: BodyRow) => {
    const next = rows[active + 1] ?? rows[active - 1];
    const outcome = notifyOutcome(await engine.run('body-remove', { bodies: [row.record.id] }));
    if (outcome.ok) goTo({ subject: next?.record.id });
  };
  const move = async (row: BodyRow, by: 1 | -1) => {
    const at = rows.indexOf(row);
    if (at + by < 0 || at + by >= rows.length) return;
    const before: BodyId | undefined = (by === -1 ? rows[at - 1] : rows[at + 2])?.record.id;
    notifyOutcome(await engine.run('body-move', { body: row.record.id, before }));
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    const row = rows[active];
    if (editable && row !== undefined) {
      const by = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : undefined;
      if (event.altKey && by !== undefined) {
        event.preventDefault();
        return void move(row, by);
      }
      if (event.key === 'Delete') return void remove(row);
      if (event.key === 'Enter' || event.key === 'F2') {
        event.preventDefault();
        return onOpen(row);
      }
    }
    if (event.key === 'Insert' && editable) {
      event.preventDefault();
      return onNew('block');
    }
    roving(event);
  };
  if (rows.length === 0) {
    return (
      <Empty title="No bodies yet" actions={editable && <NewButtons onNew={onNew} />}>
        <p>
          A body is a simple solid that stands on stations and sizes. Bodies act in the order of the list: each adds to
          the part, or takes from it. A block typed as three lengths makes its stations and dimensions by itself.
        </p>
      </Empty>
    );
  }
  return (
    <div className="bodies">
      <div
        ref={list}
        className="bodies-list"
        role="listbox"
        aria-label="Bodies"
        tabIndex={0}
        data-pane-entry
        aria-activedescendant={active < 0 ? undefined : `body-${active}`}
        onKeyDown={onKeyDown}
      >
        {rows.map((row, i) => (
          <div
            key={row.record.id}
            id={`body-${i}`}
            role="option"
            aria-selected={i === active}
            data-body={row.record.id}
            className={classNames('list-row', 'body-row', row.problem !== undefined && 'lacks')}
            onClick={() => goTo({ subject: row.record.id })}
            onDoubleClick={() => editable && onOpen(row)}
          >
            <span className="figure body-sign" aria-hidden="true">
              {row.record.adds ? '+' : '−'}
            </span>
            <span className="unseen">{row.record.adds ? 'adds' : 'takes away'}</span>
            <span className="body-name ellipsis">{row.record.name}</span>
            <span className="soft body-shape ellipsis">
              {row.shape}
              {row.copies > 1 && ` × ${row.copies}`}
            </span>
            <span className="lettering soft body-finish">{row.record.finish}</span>
            {row.problem === undefined ? (
              <span className="figure grow ellipsis">
                {row.extent}
                {row.idle && ' · changes nothing'}
              </span>
            ) : (
              <span className="grow ellipsis mark caution" title={row.problem}>
                <SeverityMark severity="caution" />
                <span className="ellipsis">{row.problem}</span>
              </span>
            )}
            {row.mark !== undefined && <SeverityMark severity={row.mark} />}
          </div>
        ))}
      </div>
      {editable && (
        <div className="bodies-acts">
          <NewButtons onNew={onNew} />
          <span className="spring" />
          {rows[active] !== undefined && (
            <>
              <Button onClick={() => onOpen(rows[active]!)}>Change…</Button>
              <Button look="stop" onClick={() => void remove(rows[active]!)}>
                Remove
              </Button>
            </>
          )}
        </div>
      )}
    </div>
  );
}

function NewButtons({ onNew }: { readonly onNew: (type: ShapeType) => void }): ReactNode {
  return shapeNames.map(([type, name]) => (
    <Button key={type} onClick={() => onNew(type)}>
      {name}
    </Button>
  ));
}
