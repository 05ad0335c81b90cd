import { useState } from 'react';
import type { Part } from '../../shared/build/part.ts';
import { useEngine, useIsEditable } from '../engine/use-engine.ts';
import { ChoiceField, SettledField } from '../kit/field.tsx';
import { MaterialField } from '../materials/material-field.tsx';

/** The title block of a part: every field is an edit of its own as soon as the writer is done with it. */
export function PartForm({ part }: { readonly part: Part }) {
  const engine = useEngine();
  const editable = useIsEditable();
  const [error, setError] = useState<{ readonly field: string; readonly sentence: string }>();
  const set = async (field: keyof Part, value: string | number) => {
    const outcome = await engine.run('part-set', { part: part.id, set: { [field]: value } });
    setError(outcome.ok ? undefined : { field, sentence: outcome.sentence });
  };
  const errorOf = (field: keyof Part) => (error?.field === field ? error.sentence : undefined);
  const text = (label: string, field: 'name' | 'number' | 'sheet' | 'note', lines?: number) => (
    <SettledField
      label={label}
      value={part[field]}
      readOnly={!editable}
      error={errorOf(field)}
      {...(lines === undefined ? {} : { lines })}
      onSettle={(value) => void set(field, value)}
    />
  );
  const setQuantity = (written: string) => {
    const quantity = Number(written);
    if (Number.isInteger(quantity) && quantity >= 1 && quantity <= 10_000) return void set('quantity', quantity);
    setError({
      field: 'quantity',
      sentence: `"${written}" is not a number of pieces. Write a whole number from 1 to 10 000.`,
    });
  };
  return (
    <div className="part-form">
      {text('Name', 'name')}
      <ChoiceField
        label="Make"
        value={part.make}
        disabled={!editable}
        options={[
          { value: 'cast', label: 'Cast' },
          { value: 'stock', label: 'From stock' },
          { value: 'bought', label: 'Bought' },
        ]}
        onChange={(make) => void set('make', make)}
      />
      <MaterialField part={part} error={errorOf('material')} onSettle={(material) => void set('material', material)} />
      <div className="form-row">
        {text('Drawing number', 'number')}
        {text('Sheet', 'sheet')}
        <SettledField
          label="Quantity"
          value={String(part.quantity)}
          inputMode="numeric"
          readOnly={!editable}
          error={errorOf('quantity')}
          onSettle={setQuantity}
        />
      </div>
      {text('Note', 'note', 3)}
    </div>
  );
}
