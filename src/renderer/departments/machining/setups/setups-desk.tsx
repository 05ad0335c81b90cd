import { useRef, useState } from 'react';
import type { PartId, SetupId } from '../../../../shared/base/ids.ts';
import { notifyOutcome } from '../../../app/notices.ts';
import { goTo, usePlace } from '../../../app/place.ts';
import type { SetupGroup, SetupModel, VerdictRow } from '../../../engine/machining/models.ts';
import { useEngine, useIsEditable, useView } from '../../../engine/use-engine.ts';
import { Button } from '../../../kit/button.tsx';
import { Empty } from '../../../kit/empty.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { Split } from '../../../kit/split.tsx';
import { setMachining, useMachining } from '../machining-state.ts';
import { SwingPane } from '../swing/swing-pane.tsx';
import { AddSetupDialog } from './add-setup-dialog.tsx';
import { SetupForm } from './setup-form.tsx';
import { SetupList } from './setup-list.tsx';
import { VerdictList } from './verdict-list.tsx';

const none: readonly SetupGroup[] = [];

/** Set-ups: the list of all, and the one picked in the machine, with its verdicts and its form. */
export function SetupsDesk() {
  const groups = useView('setups', null) ?? none;
  const { setup: wanted } = useMachining();
  const { part } = usePlace();
  const picked = pickedOf(groups, wanted, part);
  const [adding, setAdding] = useState(false);
  return (
    <>
      <Split
        id="setups"
        direction="across"
        sized="first"
        label="Width of the list of set-ups"
        initial={228}
        min={170}
        max={480}
      >
        <SetupList groups={groups} picked={picked?.id} onAdd={() => setAdding(true)} />
        {picked === undefined ? (
          <NoSetup onAdd={() => setAdding(true)} />
        ) : (
          <SetupRoom setup={picked.id} part={picked.part} />
        )}
      </Split>
      {adding && (
        <AddSetupDialog
          groups={groups}
          onClose={() => setAdding(false)}
          onAdded={(id, part) => {
            setAdding(false);
            setMachining({ setup: id });
            goTo({ part, subject: id });
          }}
        />
      )}
    </>
  );
}

/** The one that was picked; else the first of the part on show, else the first of all. */
function pickedOf(groups: readonly SetupGroup[], wanted: SetupId | undefined, part: PartId | undefined) {
  const rows = groups.flatMap((group) => group.rows.map(({ record }) => record));
  return rows.find(({ id }) => id === wanted) ?? rows.find((record) => record.part === part) ?? rows[0];
}

function NoSetup({ onAdd }: { readonly onAdd: () => void }) {
  const editable = useIsEditable();
  return (
    <Pane title="Swing view">
      <Empty
        title="Nothing is set up yet"
        actions={
          editable && (
            <Button look="main" onClick={onAdd}>
              Add a Set-up
            </Button>
          )
        }
      >
        <p>
          Say how a casting is held on which machine, and the line it turns about. It is then drawn to scale in the
          machine, swept round, and held against bed, saddle and cross slide wherever the cut asks the saddle to stand.
        </p>
        <p>Machines are entered once, under Machines, and every build can take them from your shop.</p>
      </Empty>
    </Pane>
  );
}

function SetupRoom({ setup, part }: { readonly setup: SetupId; readonly part: PartId }) {
  // While the next set-up is on its way the last one stays: no flicker between them.
  const fresh = useView('setup', { setup, part });
  const last = useRef<SetupModel>(undefined);
  if (fresh !== undefined) last.current = fresh;
  const model = last.current;
  const { verdict: key } = useMachining();
  if (model === undefined) return <Pane title="Swing view">{null}</Pane>;
  const verdict = verdictOf(model, key);
  return (
    <div className="setup-room" inert={model.record.id !== setup}>
      <Split
        id="verdicts"
        direction="across"
        sized="second"
        label="Width of the verdicts"
        initial={304}
        min={230}
        max={640}
      >
        <Split
          id="setup-form"
          direction="down"
          sized="second"
          label="Height of the form"
          initial={230}
          min={110}
          max={900}
        >
          <SwingPane model={model} verdict={verdict} />
          <FormPane model={model} />
        </Split>
        <VerdictList model={model} picked={verdict} />
      </Split>
    </div>
  );
}

const rank = { hits: 3, 'at the limit': 2, unknown: 1, clears: 0 } as const;

/** The verdict that was picked; else the worst, and of equal ones that with the least margin. */
function verdictOf({ verdicts }: SetupModel, key: string | undefined): VerdictRow | undefined {
  const picked = verdicts.find((row) => row.key === key);
  if (picked !== undefined) return picked;
  const isWorse = (a: VerdictRow, b: VerdictRow) =>
    rank[a.state] === rank[b.state]
      ? (a.shown.margin ?? Infinity) < (b.shown.margin ?? Infinity)
      : rank[a.state] > rank[b.state];
  return verdicts.reduce<VerdictRow | undefined>(
    (worst, row) => (worst === undefined || isWorse(row, worst) ? row : worst),
    undefined,
  );
}

function FormPane({ model }: { readonly model: SetupModel }) {
  const engine = useEngine();
  const editable = useIsEditable();
  const setup = model.record.id;
  const copy = async () => {
    const outcome = notifyOutcome(await engine.run('setup-copy', { setup }));
    const id = outcome.ok ? outcome.added.find((one) => one.startsWith('setup:')) : undefined;
    if (id !== undefined) setMachining({ setup: id as SetupId });
  };
  const remove = async () => {
    const outcome = notifyOutcome(await engine.run('setup-remove', { setups: [setup] }));
    if (outcome.ok) setMachining({ setup: undefined });
  };
  return (
    <Pane
      title="Set-up"
      actions={
        editable && (
          <>
            <Button look="quiet" onClick={() => void copy()}>
              Copy
            </Button>
            <Button look="quiet" onClick={() => void remove()}>
              Remove
            </Button>
          </>
        )
      }
    >
      <SetupForm key={setup} model={model} />
    </Pane>
  );
}
