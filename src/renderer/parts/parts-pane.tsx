import { useVirtualizer } from '@tanstack/react-virtual';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { PartId } from '../../shared/base/ids.ts';
import { nameKey } from '../../shared/formula/name-key.ts';
import { addPart } from '../app/adding.ts';
import { askName, useUnnamed } from '../app/naming.ts';
import { notify, notifyOutcome } from '../app/notices.ts';
import { goTo, usePlace } from '../app/place.ts';
import { useEngine, useIsEditable, useView } from '../engine/use-engine.ts';
import type { PartLine } from '../engine/views/summary.ts';
import { Button, IconButton } from '../kit/button.tsx';
import { Empty } from '../kit/empty.tsx';
import { AddIcon } from '../kit/icons.tsx';
import { GateMark, SeverityMark } from '../kit/marks.tsx';
import { Pane } from '../kit/pane.tsx';
import { useRoving } from '../kit/roving.ts';

const ROW_PX = 44;
const none: readonly PartLine[] = [];

/** Every part of the build with its gates; one tab stop, arrows, type-ahead, rename in place. */
export function PartsPane() {
  const engine = useEngine();
  const editable = useIsEditable();
  const place = usePlace();
  const known = useView('summary', null)?.parts;
  const parts = known ?? none;
  const [filter, setFilter] = useState('');
  const [renaming, setRenaming] = useState<PartId>();
  const list = useRef<HTMLDivElement>(null);
  const shown = useMemo(() => {
    const words = nameKey(filter).split(' ').filter(Boolean);
    if (words.length === 0) return parts;
    return parts.filter((part) => {
      const key = nameKey(`${part.name} ${part.number} ${part.make} ${part.material}`);
      return words.every((word) => key.includes(word));
    });
  }, [parts, filter]);
  const active = shown.findIndex((part) => part.id === place.part);
  const rows = useVirtualizer({
    count: shown.length,
    estimateSize: () => ROW_PX,
    getScrollElement: () => list.current,
    overscan: 8,
  });
  useEffect(() => {
    if (active >= 0) rows.scrollToIndex(active);
  }, [active, rows]);
  const unnamed = useUnnamed();
  useEffect(() => {
    if (!parts.some((part) => part.id === unnamed)) return;
    askName(undefined);
    setFilter('');
    setRenaming(unnamed as PartId);
  }, [unnamed, parts]);
  const select = (index: number) => goTo({ part: shown[index]?.id });
  const roving = useRoving({ count: shown.length, active, onActive: select, textAt: (i) => shown[i]?.name ?? '' });

  const remove = async (part: PartLine) => {
    const next = shown[active + 1] ?? shown[active - 1];
    const outcome = notifyOutcome(await engine.run('part-remove', { parts: [part.id] }));
    if (!outcome.ok) return;
    goTo({ part: next?.id });
    notify({
      sentence: `${part.name} is removed with its stations and dimensions. Undo brings it back.`,
      isRefusal: false,
    });
  };
  const move = (part: PartLine, step: 1 | -1) => {
    const before = step === 1 ? shown[active + 2]?.id : shown[active - 1]?.id;
    if (step === -1 && before === undefined) return;
    void engine.run('part-move', { part: part.id, before }).then(notifyOutcome);
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    if (event.target !== event.currentTarget) return;
    const part = shown[active];
    if (editable && event.key === 'Insert') void addPart(engine);
    else if (part === undefined) return void roving(event);
    else if (event.altKey && event.key === 'ArrowDown' && editable) move(part, 1);
    else if (event.altKey && event.key === 'ArrowUp' && editable) move(part, -1);
    else if (event.key === 'F2' && editable) setRenaming(part.id);
    else if (event.key === 'Delete' && editable) void remove(part);
    else if (event.key === 'Enter') goTo({ department: 'drawing', part: part.id });
    else return void roving(event);
    event.preventDefault();
  };
  return (
    <Pane
      title="Parts"
      beside={
        known !== undefined && (
          <span className="figure soft">
            {shown.length === parts.length ? parts.length : `${shown.length} of ${parts.length}`}
          </span>
        )
      }
      actions={
        editable && (
          <IconButton label="Add a part" keys="Insert" icon={<AddIcon />} onClick={() => void addPart(engine)} />
        )
      }
    >
      {known === undefined ? null : parts.length === 0 ? (
        <Empty
          title="No parts yet"
          actions={
            editable && (
              <Button look="main" onClick={() => void addPart(engine)}>
                Add a Part
              </Button>
            )
          }
        >
          <p>A part is an item of the machine: a casting, something cut from stock, or a thing bought ready.</p>
        </Empty>
      ) : (
        <div className="parts">
          <div className="parts-filter">
            <input
              type="search"
              className="input"
              aria-label="Filter the parts"
              placeholder="Filter"
              value={filter}
              onChange={(event) => setFilter(event.target.value)}
            />
          </div>
          <div
            ref={list}
            className="parts-list"
            role="listbox"
            aria-label="Parts"
            tabIndex={0}
            data-pane-entry
            aria-activedescendant={active >= 0 ? `part-${shown[active]?.id}` : undefined}
            onKeyDown={onKeyDown}
          >
            <div className="parts-space" role="presentation" style={{ height: rows.getTotalSize() }}>
              {rows.getVirtualItems().map(({ index, start }) => {
                const part = shown[index];
                if (part === undefined) return null;
                return (
                  <PartRow
                    key={part.id}
                    part={part}
                    top={start}
                    index={index}
                    count={shown.length}
                    selected={part.id === place.part}
                    renaming={part.id === renaming}
                    onSelect={() => goTo({ part: part.id })}
                    onRename={(name) => {
                      setRenaming(undefined);
                      list.current?.focus();
                      if (name !== undefined && name !== part.name)
                        void engine.run('part-set', { part: part.id, set: { name } }).then(notifyOutcome);
                    }}
                    onStartRename={() => editable && setRenaming(part.id)}
                  />
                );
              })}
            </div>
          </div>
          {shown.length === 0 && <p className="soft parts-none">No part matches "{filter}".</p>}
        </div>
      )}
    </Pane>
  );
}

interface PartRowProps {
  readonly part: PartLine;
  readonly top: number;
  readonly index: number;
  readonly count: number;
  readonly selected: boolean;
  readonly renaming: boolean;
  readonly onSelect: () => void;
  readonly onStartRename: () => void;
  /** Undefined: thought better of it. */
  readonly onRename: (name: string | undefined) => void;
}

const makeWords = { cast: 'cast', stock: 'from stock', bought: 'bought' } as const;

function PartRow({ part, top, index, count, selected, renaming, onSelect, onStartRename, onRename }: PartRowProps) {
  const { counts } = part;
  return (
    <div
      id={`part-${part.id}`}
      role="option"
      aria-selected={selected}
      aria-posinset={index + 1}
      aria-setsize={count}
      className="list-row part-row"
      style={{ transform: `translateY(${top}px)` }}
      onClick={onSelect}
      onDoubleClick={onStartRename}
    >
      <span className="part-gates">
        {part.gates.map(({ gate, state }) => (
          <GateMark key={gate} gate={gate} state={state} />
        ))}
      </span>
      <span className="grow part-words">
        {renaming ? (
          <NameInput name={part.name} onDone={onRename} />
        ) : (
          <span className="ellipsis part-name">
            {part.name}
            {part.quantity > 1 && <span className="figure soft"> ×{part.quantity}</span>}
          </span>
        )}
        <span className="ellipsis part-under">
          {[part.number, makeWords[part.make], part.material].filter(Boolean).join(' · ')}
        </span>
      </span>
      {counts.stop > 0 && <SeverityMark severity="stop" count={counts.stop} />}
      {counts.stop === 0 && counts.caution > 0 && <SeverityMark severity="caution" count={counts.caution} />}
    </div>
  );
}

function NameInput({ name, onDone }: { readonly name: string; readonly onDone: (name: string | undefined) => void }) {
  const [text, setText] = useState(name);
  const input = useRef<HTMLInputElement>(null);
  const done = useRef(false);
  useEffect(() => {
    input.current?.focus();
    input.current?.select();
  }, []);
  const finish = (value: string | undefined) => {
    if (done.current) return;
    done.current = true;
    onDone(value);
  };
  return (
    <input
      ref={input}
      className="input part-input"
      aria-label="Name of the part"
      value={text}
      onChange={(event) => setText(event.target.value)}
      onBlur={() => finish(text.trim() === '' ? undefined : text)}
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key === 'Enter') finish(text.trim() === '' ? undefined : text);
        if (event.key === 'Escape') finish(undefined);
      }}
    />
  );
}
