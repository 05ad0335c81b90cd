import { useState } from 'react';
import type { MachineId } from '../../../../shared/base/ids.ts';
import { type GenericMachine, genericMachines } from '../../../../shared/tables/generic-machines.ts';
import { type MachineType, machineTypes } from '../../../../shared/tables/machine-figures.ts';
import { useEngine } from '../../../engine/use-engine.ts';
import { Button } from '../../../kit/button.tsx';
import { Dialog } from '../../../kit/dialog.tsx';
import { SelectField, TextField } from '../../../kit/field.tsx';

interface AddMachineDialogProps {
  readonly onClose: () => void;
  readonly onAdded: (id: MachineId) => void;
}

const types = machineTypes.map((type) => ({ value: type, label: type }));

/** A machine begins with the figures of its size class, or with none. */
export function AddMachineDialog({ onClose, onAdded }: AddMachineDialogProps) {
  const engine = useEngine();
  const [type, setType] = useState<MachineType>('lathe');
  const [generic, setGeneric] = useState('');
  const [name, setName] = useState('');
  const [error, setError] = useState<string>();
  const rows = genericMachines.filter((row: GenericMachine) => row.type === type);
  const add = async () => {
    const outcome = await engine.run('machine-add', {
      type,
      ...(generic === '' ? {} : { generic }),
      ...(name.trim() === '' ? {} : { set: { name } }),
    });
    if (!outcome.ok) return setError(outcome.sentence);
    const id = outcome.added.find((one) => one.startsWith('machine:'));
    if (id !== undefined) onAdded(id as MachineId);
  };
  return (
    <Dialog
      title="Add a machine"
      onClose={onClose}
      onSubmit={() => void add()}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button look="main" type="submit">
            Add
          </Button>
        </>
      }
    >
      <SelectField
        label="What it is"
        value={type}
        options={types}
        onChange={(next) => {
          setType(next);
          setGeneric('');
        }}
      />
      <SelectField
        label="Begin with"
        value={generic}
        options={[
          { value: '', label: 'Nothing: I measure it myself' },
          ...rows.map((row) => ({ value: row.id, label: `Its size class: ${row.name}` })),
        ]}
        hint="Figures of a size class are of no one machine; they are marked generic until you say they are yours."
        onChange={setGeneric}
      />
      <TextField
        label="Name"
        value={name}
        placeholder={rows.find(({ id }) => id === generic)?.name ?? type}
        error={error}
        onChange={setName}
      />
    </Dialog>
  );
}
