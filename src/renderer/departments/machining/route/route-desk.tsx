import './route.css';
import { useRef, useState } from 'react';
import type { OperationId, PartId } from '../../../../shared/base/ids.ts';
import type { Process } from '../../../../shared/build/operation.ts';
import { notifyOutcome } from '../../../app/notices.ts';
import { goTo, usePlace } from '../../../app/place.ts';
import type { RouteModel } from '../../../engine/machining/route-models.ts';
import { useEngine, useIsEditable, useView } from '../../../engine/use-engine.ts';
import { Button } from '../../../kit/button.tsx';
import { Empty } from '../../../kit/empty.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { Split } from '../../../kit/split.tsx';
import { Tabs } from '../../../kit/tabs.tsx';
import { PartsPane } from '../../../parts/parts-pane.tsx';
import { setMachining, useMachining } from '../machining-state.ts';
import { AddOperation } from './add-operation.tsx';
import { HolesTable } from './holes-table.tsx';
import { OperationPane } from './operation-pane.tsx';
import { ProposeDialog } from './propose-dialog.tsx';
import { RouteList } from './route-list.tsx';

/** The route: the operations of the part on show in order, what each asks for, and its holes by size. */
export function RouteDesk() {
  const { part } = usePlace();
  return (
    <Split
      id="route-parts"
      direction="across"
      sized="first"
      label="Width of the list of parts"
      initial={212}
      min={160}
      max={480}
    >
      <PartsPane />
      {part === undefined ? (
        <Pane title="Route">
          <Empty title="No part on the board">
            <p>Choose a part in the list: its route stands here, operation by operation.</p>
          </Empty>
        </Pane>
      ) : (
        <RouteRoom part={part} />
      )}
    </Split>
  );
}

type Sheet = 'operations' | 'holes';

function RouteRoom({ part }: { readonly part: PartId }) {
  const engine = useEngine();
  const editable = useIsEditable();
  const fresh = useView('route', { part });
  const last = useRef<RouteModel>(undefined);
  if (fresh !== undefined) last.current = fresh;
  const model = last.current;
  const { operation: wanted } = useMachining();
  const [sheet, setSheet] = useState<Sheet>('operations');
  const [proposing, setProposing] = useState(false);
  if (model === undefined) return <Pane title="Route">{null}</Pane>;
  const picked = model.rows.find(({ record }) => record.id === wanted) ?? model.rows[0];
  const pick = (id: OperationId) => {
    setMachining({ operation: id });
    goTo({ subject: id });
  };
  const add = async (process: Process) => {
    const setup = picked?.record.setup;
    const outcome = notifyOutcome(
      await engine.run('operation-add', { part, process, ...(setup === undefined ? {} : { set: { setup } }) }),
    );
    const id = outcome.ok ? outcome.added.find((one) => one.startsWith('operation:')) : undefined;
    if (id !== undefined) pick(id as OperationId);
  };
  const tabs = (
    <Tabs
      label="Sheet"
      panel="route-sheet"
      value={sheet}
      onChange={setSheet}
      tabs={[
        {
          value: 'operations',
          label: (
            <>
              Operations <span className="figure">{model.rows.length}</span>
            </>
          ),
        },
        { value: 'holes', label: 'Holes' },
      ]}
    />
  );
  const list = (
    <Pane
      title={model.name}
      beside={tabs}
      actions={
        sheet === 'operations' &&
        editable &&
        model.rows.length > 1 && <Button onClick={() => setProposing(true)}>Propose an Order…</Button>
      }
    >
      <div id="route-sheet" role="tabpanel" aria-label={sheet} className="route-sheet">
        {sheet === 'holes' ? (
          <HolesTable part={part} name={model.name} />
        ) : model.rows.length === 0 ? (
          <Empty
            title="No operations yet"
            actions={editable && <AddOperation onAdd={(process) => void add(process)} />}
          >
            <p>
              An operation makes stations and sizes true: it faces, turns, bores, drills. Say what each makes and what
              it is measured from, and in which set-up; the order is then checked, and can be proposed.
            </p>
          </Empty>
        ) : (
          <RouteList
            model={model}
            picked={picked?.record.id}
            onPick={pick}
            onAdd={(process) => void add(process)}
            onRemoved={(next) => setMachining({ operation: next })}
          />
        )}
      </div>
      {proposing && <ProposeDialog part={part} onClose={() => setProposing(false)} />}
    </Pane>
  );
  return (
    <div className="setup-room" inert={model.part !== part}>
      {sheet === 'operations' && picked !== undefined ? (
        <Split
          id="operation"
          direction="across"
          sized="second"
          label="Width of the operation"
          initial={340}
          min={260}
          max={640}
        >
          {list}
          <OperationPane key={picked.record.id} row={picked} model={model} />
        </Split>
      ) : (
        list
      )}
    </div>
  );
}
