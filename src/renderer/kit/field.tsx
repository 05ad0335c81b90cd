import {
  type InputHTMLAttributes,
  type ReactNode,
  type TextareaHTMLAttributes,
  useEffect,
  useId,
  useState,
} from 'react';
import { StopIcon } from './icons.tsx';

interface FieldProps {
  readonly label: string;
  readonly hint?: ReactNode;
  /** What is wrong and what to do, in words. */
  readonly error?: string | undefined;
}

interface ControlIds {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': boolean | undefined;
}

/** Label, control, hint and error tied together for eye and ear. */
function Field({ label, hint, error, children }: FieldProps & { children(ids: ControlIds): ReactNode }) {
  const id = useId();
  const described = [hint !== undefined && `${id}h`, error !== undefined && `${id}e`].filter(Boolean).join(' ');
  return (
    <div className="field">
      <label htmlFor={id} className="lettering">
        {label}
      </label>
      {children({
        id,
        'aria-describedby': described === '' ? undefined : described,
        'aria-invalid': error === undefined ? undefined : true,
      })}
      {hint !== undefined && (
        <div id={`${id}h`} className="hint">
          {hint}
        </div>
      )}
      {error !== undefined && (
        <div id={`${id}e`} className="error">
          <StopIcon />
          {error}
        </div>
      )}
    </div>
  );
}

type InputProps = Omit<InputHTMLAttributes<HTMLInputElement>, 'id' | 'value' | 'onChange'>;

interface TextFieldProps extends FieldProps, InputProps {
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** A line of text whose every keystroke counts. */
export function TextField({ label, hint, error, value, onChange, ...rest }: TextFieldProps) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(ids) => (
        <input {...rest} {...ids} className="input" value={value} onChange={(event) => onChange(event.target.value)} />
      )}
    </Field>
  );
}

interface SettledFieldProps extends FieldProps, InputProps {
  readonly value: string;
  /** Called on Enter and on leaving, when the text differs or was refused. Esc takes the typing back. */
  readonly onSettle: (value: string) => void;
  readonly lines?: number;
}

/** A line (or several) that is handed on only when the writer is done with it. */
export function SettledField({ label, hint, error, value, onSettle, lines, ...rest }: SettledFieldProps) {
  const [draft, setDraft] = useState(value);
  useEffect(() => setDraft(value), [value]);
  const settle = () => (draft !== value || error !== undefined) && onSettle(draft);
  const shared = {
    className: 'input',
    value: draft,
    onChange: (event: { target: { value: string } }) => setDraft(event.target.value),
    onBlur: settle,
    onKeyDown: (event: React.KeyboardEvent) => {
      if (event.key === 'Escape' && draft !== value) {
        event.stopPropagation();
        // In a dialog the browser would take the key to close it.
        event.preventDefault();
        setDraft(value);
      }
      if (event.key === 'Enter' && (lines === undefined || event.ctrlKey)) settle();
    },
  };
  return (
    <Field label={label} hint={hint} error={error}>
      {(ids) =>
        lines === undefined ? (
          <input {...rest} {...ids} {...shared} />
        ) : (
          <textarea {...(rest as TextareaHTMLAttributes<HTMLTextAreaElement>)} {...ids} {...shared} rows={lines} />
        )
      }
    </Field>
  );
}

interface Option<V extends string> {
  readonly value: V;
  readonly label: string;
}

interface SelectFieldProps<V extends string> extends FieldProps {
  readonly value: V;
  readonly options: readonly Option<V>[];
  readonly onChange: (value: V) => void;
  readonly disabled?: boolean;
}

export function SelectField<V extends string>({
  label,
  hint,
  error,
  value,
  options,
  onChange,
  disabled,
}: SelectFieldProps<V>) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(ids) => (
        <select
          {...ids}
          className="input"
          value={value}
          disabled={disabled}
          onChange={(event) => onChange(event.target.value as V)}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

/** A few alternatives, all in sight. */
export function ChoiceField<V extends string>({ label, value, options, onChange, disabled }: SelectFieldProps<V>) {
  const name = useId();
  return (
    <fieldset className="field choice-field">
      <legend className="label lettering soft">{label}</legend>
      <div className="choice">
        {options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              disabled={disabled}
              onChange={() => onChange(option.value)}
            />
            {option.label}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
