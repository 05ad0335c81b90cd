import { useMemo, useRef } from 'react';
import type { MachineId } from '../../../../shared/base/ids.ts';
import type { Machine } from '../../../../shared/build/machine.ts';
import { machineTypes } from '../../../../shared/tables/machine-figures.ts';
import { notifyOutcome } from '../../../app/notices.ts';
import type { MachineRow } from '../../../engine/machining/models.ts';
import { useEngine, useIsEditable } from '../../../engine/use-engine.ts';
import { Button, IconButton } from '../../../kit/button.tsx';
import { AddIcon, CautionIcon, NoteIcon, RemoveIcon } from '../../../kit/icons.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { useRoving } from '../../../kit/roving.ts';
import { setMachining } from '../machining-state.ts';
import { removeFromShop, type Shop } from './shop.ts';
import { markOf } from './shop-marks.ts';

interface MachineListProps {
  readonly rows: readonly MachineRow[];
  readonly picked: MachineId | undefined;
  readonly shop: Shop;
  readonly onAdd: () => void;
  readonly onRemove: (row: MachineRow) => void;
}

/** The machines of the build by type; below them those of the shop that it has not. */
export function MachineList({ rows, picked, shop, onAdd, onRemove }: MachineListProps) {
  const editable = useIsEditable();
  const list = useRef<HTMLDivElement>(null);
  const groups = useMemo(
    () =>
      machineTypes
        .map((type) => ({ type, rows: rows.filter(({ record }) => record.type === type) }))
        .filter((group) => group.rows.length > 0),
    [rows],
  );
  const inOrder = groups.flatMap((group) => group.rows);
  const active = inOrder.findIndex(({ record }) => record.id === picked);
  const roving = useRoving({
    count: inOrder.length,
    active,
    onActive: (index) => {
      setMachining({ machine: inOrder[index]?.record.id });
      list.current?.querySelector(`#machine-row-${index}`)?.scrollIntoView({ block: 'nearest' });
    },
    textAt: (index) => inOrder[index]?.record.name ?? '',
  });
  const onKeyDown = (event: React.KeyboardEvent) => {
    const row = inOrder[active];
    if (editable && event.key === 'Delete' && row !== undefined) return onRemove(row);
    if (editable && event.key === 'Insert') {
      event.preventDefault();
      return onAdd();
    }
    roving(event);
  };
  let index = -1;
  return (
    <Pane
      title="Machines of the build"
      beside={<span className="figure soft">{rows.length}</span>}
      actions={editable && <IconButton label="Add a machine" keys="Insert" icon={<AddIcon />} onClick={onAdd} />}
    >
      <div className="machine-lists">
        {inOrder.length > 0 && (
          <div
            ref={list}
            className="machine-list"
            role="listbox"
            aria-label="Machines of the build"
            tabIndex={0}
            data-pane-entry
            aria-activedescendant={active < 0 ? undefined : `machine-row-${active}`}
            onKeyDown={onKeyDown}
          >
            {groups.map((group) => (
              <div key={group.type} role="group" aria-label={group.type}>
                <div className="setup-part lettering" aria-hidden="true">
                  {group.type}
                </div>
                {group.rows.map((row) => {
                  index += 1;
                  return <Row key={row.record.id} row={row} index={index} isActive={index === active} shop={shop} />;
                })}
              </div>
            ))}
          </div>
        )}
        <OfShop rows={rows} shop={shop} />
      </div>
    </Pane>
  );
}

interface RowProps {
  readonly row: MachineRow;
  readonly index: number;
  readonly isActive: boolean;
  readonly shop: Shop;
}

function Row({ row, index, isActive, shop }: RowProps) {
  const { record, words, used } = row;
  const mark = markOf(record, shop);
  return (
    <div
      id={`machine-row-${index}`}
      role="option"
      aria-selected={isActive}
      data-machine={record.id}
      className="list-row setup-row"
      onClick={() => setMachining({ machine: record.id })}
    >
      <span className="setup-words grow">
        <span className="setup-name ellipsis">{record.name}</span>
        <span className="setup-under ellipsis">{words === '' ? 'size not known' : words}</span>
        <span className="machine-marks">
          {record.generic && (
            <span className="mark note">
              <NoteIcon />
              generic figures
            </span>
          )}
          {mark === 'differs' && (
            <span className="mark caution">
              <CautionIcon />
              differs from your shop
            </span>
          )}
          {mark === 'not in shop' && <span className="soft">not in your shop</span>}
        </span>
      </span>
      {used.length > 0 && (
        <span className="soft machine-used">
          <span className="figure">{used.length}</span>
          <span className="unseen"> {used.length === 1 ? 'set-up on it' : 'set-ups on it'}</span>
        </span>
      )}
    </div>
  );
}

function OfShop({ rows, shop }: { readonly rows: readonly MachineRow[]; readonly shop: Shop }) {
  const engine = useEngine();
  const editable = useIsEditable();
  const here = new Set(rows.map(({ record }) => record.id));
  const others = (shop.machines ?? []).filter(({ id }) => !here.has(id));
  const take = async (machines: readonly Machine[]) => {
    const outcome = notifyOutcome(await engine.run('machines-take', { machines }));
    if (outcome.ok) setMachining({ machine: machines[0]?.id });
  };
  const said = [...(shop.problem === undefined ? [] : [shop.problem]), ...shop.lost];
  return (
    <>
      {said.map((sentence) => (
        <p key={sentence} className="machine-problem">
          {sentence}
        </p>
      ))}
      {others.length > 0 && (
        <section aria-label="In your shop, not in this build">
          <div className="setup-part lettering">In your shop, not in this build</div>
          <ul>
            {others.map((machine) => (
              <li key={machine.id} className="list-row">
                <span className="grow ellipsis">{machine.name}</span>
                <span className="soft">{machine.type}</span>
                {editable && (
                  <Button onClick={() => void take([machine])} aria-label={`Add ${machine.name} to the build`}>
                    Add
                  </Button>
                )}
                <IconButton
                  label={`Take ${machine.name} out of your shop`}
                  icon={<RemoveIcon />}
                  onClick={() => void removeFromShop(machine.id)}
                />
              </li>
            ))}
          </ul>
          {editable && others.length > 1 && (
            <div className="setup-acts">
              <Button onClick={() => void take(others)}>Add All {others.length}</Button>
            </div>
          )}
        </section>
      )}
    </>
  );
}
