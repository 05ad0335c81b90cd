import { useEffect, useMemo, useState } from 'react';
import type { NameOption } from '../../../engine/machining/models.ts';
import { ComboField } from '../../../kit/combo-field.tsx';

interface NameFieldProps {
  readonly label: string;
  /** What is kept now, as it is shown. */
  readonly kept: string;
  readonly options: readonly NameOption[];
  readonly placeholder: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly readOnly: boolean;
  readonly onSettle: (text: string) => void;
}

/** A combo box over names of the build, handed on when the writer is done with it. */
export function NameField({ label, kept, options, placeholder, hint, error, readOnly, onSettle }: NameFieldProps) {
  const [text, setText] = useState(kept);
  useEffect(() => setText(kept), [kept]);
  const shown = useMemo(() => options.map(({ name, aside }) => ({ text: name, aside })), [options]);
  const here = options.find(({ name }) => name === text.trim());
  return (
    <ComboField
      label={label}
      value={text}
      options={shown}
      placeholder={placeholder}
      hint={hint ?? here?.aside ?? ''}
      error={error}
      readOnly={readOnly}
      onChange={setText}
      settling={{ kept, onSettle }}
    />
  );
}
