import { useState } from 'react';
import type { MachineId, PartId, SetupId } from '../../../../shared/base/ids.ts';
import { usePlace } from '../../../app/place.ts';
import type { SetupGroup } from '../../../engine/machining/models.ts';
import { useEngine, useView } from '../../../engine/use-engine.ts';
import { Button } from '../../../kit/button.tsx';
import { Dialog } from '../../../kit/dialog.tsx';
import { SelectField, TextField } from '../../../kit/field.tsx';

interface AddSetupDialogProps {
  readonly groups: readonly SetupGroup[];
  readonly onClose: () => void;
  readonly onAdded: (setup: SetupId, part: PartId) => void;
}

/** Which part is set up, and on which machine; everything else is said in its form. */
export function AddSetupDialog({ groups, onClose, onAdded }: AddSetupDialogProps) {
  const engine = useEngine();
  const place = usePlace();
  const machines = useView('machines', null)?.rows ?? [];
  const [part, setPart] = useState<string>(place.part ?? groups[0]?.part ?? '');
  const [machine, setMachine] = useState('');
  const [name, setName] = useState('');
  const [error, setError] = useState<string>();
  const add = async () => {
    const set = {
      ...(name.trim() === '' ? {} : { name }),
      ...(machine === '' ? {} : { machine: machine as MachineId }),
    };
    const outcome = await engine.run('setup-add', { part: part as PartId, set });
    if (!outcome.ok) return setError(outcome.sentence);
    const id = outcome.added.find((one) => one.startsWith('setup:'));
    if (id !== undefined) onAdded(id as SetupId, part as PartId);
  };
  return (
    <Dialog
      title="Add a set-up"
      onClose={onClose}
      onSubmit={() => void add()}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button look="main" type="submit" disabled={part === ''}>
            Add
          </Button>
        </>
      }
    >
      <SelectField
        label="Part"
        value={part}
        options={groups.map((group) => ({ value: group.part as string, label: group.name }))}
        onChange={setPart}
      />
      <SelectField
        label="Machine"
        value={machine}
        options={[
          { value: '', label: 'not said yet' },
          ...machines.map(({ record }) => ({ value: record.id as string, label: record.name })),
        ]}
        hint={machines.length === 0 ? 'There are none yet: enter them under Machines.' : undefined}
        onChange={setMachine}
      />
      <TextField label="Name" value={name} placeholder="foot and top on a mandrel" error={error} onChange={setName} />
    </Dialog>
  );
}
