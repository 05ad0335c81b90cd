import { useMemo, useRef } from 'react';
import type { SetupId } from '../../../../shared/base/ids.ts';
import { notifyOutcome } from '../../../app/notices.ts';
import { goTo } from '../../../app/place.ts';
import type { SetupGroup, SetupRow } from '../../../engine/machining/models.ts';
import { useEngine, useIsEditable } from '../../../engine/use-engine.ts';
import { IconButton } from '../../../kit/button.tsx';
import { classNames } from '../../../kit/class-names.ts';
import { Empty } from '../../../kit/empty.tsx';
import { AddIcon } from '../../../kit/icons.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { useRoving } from '../../../kit/roving.ts';
import { setMachining } from '../machining-state.ts';
import { VerdictMark } from '../verdict-mark.tsx';

interface SetupListProps {
  readonly groups: readonly SetupGroup[];
  readonly picked: SetupId | undefined;
  readonly onAdd: () => void;
}

const pickSetup = (row: SetupRow): void => {
  setMachining({ setup: row.record.id });
  goTo({ part: row.record.part, subject: row.record.id });
};

/** The set-ups of the build by part, each with the worst that is said of it. */
export function SetupList({ groups, picked, onAdd }: SetupListProps) {
  const engine = useEngine();
  const editable = useIsEditable();
  const list = useRef<HTMLDivElement>(null);
  const rows = useMemo(() => groups.flatMap((group) => group.rows), [groups]);
  const active = rows.findIndex(({ record }) => record.id === picked);
  const roving = useRoving({
    count: rows.length,
    active,
    onActive: (index) => {
      const row = rows[index];
      if (row === undefined) return;
      pickSetup(row);
      list.current?.querySelector(`#setup-row-${index}`)?.scrollIntoView({ block: 'nearest' });
    },
    textAt: (index) => rows[index]?.record.name ?? '',
  });
  const remove = async (row: SetupRow) => {
    const next = rows[active + 1] ?? rows[active - 1];
    const outcome = notifyOutcome(await engine.run('setup-remove', { setups: [row.record.id] }));
    if (outcome.ok) setMachining({ setup: next?.record.id });
  };
  const move = async (row: SetupRow, by: 1 | -1) => {
    const own = groups.find((group) => group.part === row.record.part)?.rows ?? [];
    const at = own.indexOf(row);
    if (at + by < 0 || at + by >= own.length) return;
    const before = (by === -1 ? own[at - 1] : own[at + 2])?.record.id;
    notifyOutcome(await engine.run('setup-move', { setup: row.record.id, before }));
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    const row = rows[active];
    const by = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : undefined;
    if (editable && row !== undefined && event.altKey && by !== undefined) {
      event.preventDefault();
      return void move(row, by);
    }
    if (editable && row !== undefined && event.key === 'Delete') return void remove(row);
    if (editable && event.key === 'Insert') {
      event.preventDefault();
      return onAdd();
    }
    roving(event);
  };
  let index = -1;
  return (
    <Pane
      title="Set-ups"
      beside={<span className="figure soft">{rows.length}</span>}
      actions={editable && <IconButton label="Add a set-up" keys="Insert" icon={<AddIcon />} onClick={onAdd} />}
    >
      {rows.length === 0 ? (
        <Empty title="No set-ups yet">
          <p>
            A set-up is a part, in a named state, held on one machine in one way. Choose a part and add its first one:
            the swing view then shows it in the machine, and whether it clears.
          </p>
        </Empty>
      ) : (
        <div
          ref={list}
          className="setup-list"
          role="listbox"
          aria-label="Set-ups"
          tabIndex={0}
          data-pane-entry
          aria-activedescendant={active < 0 ? undefined : `setup-row-${active}`}
          onKeyDown={onKeyDown}
        >
          {groups
            .filter((group) => group.rows.length > 0)
            .map((group) => (
              <div key={group.part} role="group" aria-label={group.name}>
                <div className="setup-part lettering" aria-hidden="true">
                  {group.name}
                </div>
                {group.rows.map((row) => {
                  index += 1;
                  return <Row key={row.record.id} row={row} index={index} isActive={index === active} />;
                })}
              </div>
            ))}
        </div>
      )}
    </Pane>
  );
}

interface RowProps {
  readonly row: SetupRow;
  readonly index: number;
  readonly isActive: boolean;
}

function Row({ row, index, isActive }: RowProps) {
  return (
    <div
      id={`setup-row-${index}`}
      role="option"
      aria-selected={isActive}
      data-setup={row.record.id}
      className={classNames('list-row', 'setup-row')}
      onClick={() => pickSetup(row)}
    >
      {row.state === undefined ? <span className="setup-no-mark" /> : <VerdictMark state={row.state} />}
      <span className="setup-words grow">
        <span className="setup-name ellipsis">{row.record.name}</span>
        <span className="setup-under ellipsis">
          {row.holding}, {row.machine ?? 'no machine yet'}
        </span>
        {row.words !== '' && <span className="setup-under ellipsis">{row.words}</span>}
      </span>
    </div>
  );
}
