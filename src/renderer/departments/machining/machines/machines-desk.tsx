import { useState } from 'react';
import type { MachineId } from '../../../../shared/base/ids.ts';
import { notifyOutcome } from '../../../app/notices.ts';
import type { MachineRow } from '../../../engine/machining/models.ts';
import { useEngine, useIsEditable, useView } from '../../../engine/use-engine.ts';
import { Button } from '../../../kit/button.tsx';
import { Empty } from '../../../kit/empty.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { Split } from '../../../kit/split.tsx';
import { setMachining, useMachining } from '../machining-state.ts';
import { AddMachineDialog } from './add-machine-dialog.tsx';
import { MachineForm } from './machine-form.tsx';
import { MachineList } from './machine-list.tsx';
import { useShop } from './shop.ts';

const none: readonly MachineRow[] = [];

/** Machines: those of the build, held against the user's own shop, and the figures of the one picked. */
export function MachinesDesk() {
  const engine = useEngine();
  const editable = useIsEditable();
  const model = useView('machines', null);
  const shop = useShop();
  const rows = model?.rows ?? none;
  const { machine: wanted } = useMachining();
  const [adding, setAdding] = useState(false);
  const picked = rows.find(({ record }) => record.id === wanted) ?? rows[0];
  const remove = async (row: MachineRow) => {
    const at = rows.indexOf(row);
    const outcome = notifyOutcome(await engine.run('machine-remove', { machines: [row.record.id] }));
    if (outcome.ok) setMachining({ machine: (rows[at + 1] ?? rows[at - 1])?.record.id });
  };
  return (
    <>
      <Split
        id="machines"
        direction="across"
        sized="first"
        label="Width of the list of machines"
        initial={300}
        min={200}
        max={560}
      >
        <MachineList
          rows={rows}
          picked={picked?.record.id}
          shop={shop}
          onAdd={() => setAdding(true)}
          onRemove={(row) => void remove(row)}
        />
        {picked === undefined || model === undefined ? (
          <Pane title="Machine">
            <Empty
              title="No machines yet"
              actions={
                editable && (
                  <Button look="main" onClick={() => setAdding(true)}>
                    Add a Machine
                  </Button>
                )
              }
            >
              <p>
                Enter your machines once, with the figures you can measure: they go into your shop, and every build can
                take them from there. A figure that is not known stays unknown, and a verdict that needs it says so.
              </p>
            </Empty>
          </Pane>
        ) : (
          <MachineForm
            key={picked.record.id}
            row={picked}
            unit={model.unit}
            shop={shop}
            onRemove={() => void remove(picked)}
          />
        )}
      </Split>
      {adding && (
        <AddMachineDialog
          onClose={() => setAdding(false)}
          onAdded={(id: MachineId) => {
            setAdding(false);
            setMachining({ machine: id });
          }}
        />
      )}
    </>
  );
}
