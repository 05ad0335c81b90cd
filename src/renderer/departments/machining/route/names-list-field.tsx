import { useState } from 'react';
import type { NameOption } from '../../../engine/machining/models.ts';
import { IconButton } from '../../../kit/button.tsx';
import { RemoveIcon } from '../../../kit/icons.tsx';
import { NameField } from '../fields/name-field.tsx';
import { nameOf, optionNamed } from '../fields/plan-edit.ts';

interface NamesListFieldProps {
  readonly label: string;
  readonly ids: readonly string[];
  readonly options: readonly NameOption[];
  readonly placeholder: string;
  readonly hint: string;
  readonly error: string | undefined;
  readonly readOnly: boolean;
  readonly onIds: (ids: readonly string[]) => void;
}

/** Several names of the build: those that are there can be taken out, another is added by its name. */
export function NamesListField(props: NamesListFieldProps) {
  const { label, ids, options, placeholder, hint, error, readOnly, onIds } = props;
  const [missing, setMissing] = useState<string>();
  // The field is empty again after each name: another one of it begins anew.
  const [round, setRound] = useState(0);
  const add = (text: string) => {
    if (text.trim() === '') return setMissing(undefined);
    const found = optionNamed(options, text);
    if (found === undefined)
      return setMissing(`Nothing of this part is called "${text.trim()}". Choose from the list.`);
    setMissing(undefined);
    setRound(round + 1);
    if (!ids.includes(found.id)) onIds([...ids, found.id]);
  };
  return (
    <div className="names-list">
      {!readOnly && (
        <NameField
          key={round}
          label={label}
          kept=""
          options={options.filter(({ id }) => !ids.includes(id))}
          placeholder={placeholder}
          hint={hint}
          error={missing ?? error}
          readOnly={readOnly}
          onSettle={add}
        />
      )}
      {readOnly && <span className="lettering soft">{label}</span>}
      {ids.length > 0 && (
        <ul aria-label={label}>
          {ids.map((id) => {
            const name = nameOf(options, id) || 'something removed';
            return (
              <li key={id}>
                <span className="ellipsis grow">{name}</span>
                {!readOnly && (
                  <IconButton
                    label={`Take out ${name}`}
                    icon={<RemoveIcon />}
                    onClick={() => onIds(ids.filter((one) => one !== id))}
                  />
                )}
              </li>
            );
          })}
        </ul>
      )}
    </div>
  );
}
