import type { Amount } from '../../../../shared/build/amount.ts';
import { NameField } from './name-field.tsx';
import { amountOf, amountText, type PlanEdit } from './plan-edit.ts';

interface AmountFieldProps {
  readonly edit: PlanEdit;
  readonly label: string;
  readonly field: string;
  readonly amount: Amount;
  readonly hint?: string;
  readonly onAmount: (amount: Amount) => void;
}

/** A number that is a size of the drawing, or is written here. */
export function AmountField({ edit, label, field, amount, hint, onAmount }: AmountFieldProps) {
  const { sizes } = edit.names;
  return (
    <NameField
      label={label}
      kept={amountText(sizes, amount)}
      options={sizes}
      placeholder="A size, or a length"
      hint={amount.size === undefined ? hint : undefined}
      error={edit.error(`${field}/written`) ?? edit.error(`${field}/size`)}
      readOnly={edit.readOnly}
      onSettle={(text) => onAmount(amountOf(sizes, text))}
    />
  );
}
