import { useState } from 'react';
import type { ParamsOf } from '../../shared/build/commands/registry.ts';
import { type CuttingGroup, cuttingGroups } from '../../shared/tables/cutting-metals.ts';
import type { RunOutcome } from '../engine/engine.ts';
import { useEngine } from '../engine/use-engine.ts';
import type { MaterialLine } from '../engine/views/materials.ts';
import { Button } from '../kit/button.tsx';
import { SelectField, SettledField } from '../kit/field.tsx';
import { type FigureName, figures, figureText, figureWords, readFigure } from './figures.ts';
import { groupWords, listedNames } from './words.ts';

interface OwnDetailProps {
  readonly line: MaterialLine;
  readonly editable: boolean;
  readonly onRemove: () => void;
}

type Field = FigureName | 'name' | 'source' | 'cuttingGroup';

/** All fields of a row of the build's own: each is an edit of its own as soon as the writer is done with it. */
export function OwnDetail({ line, editable, onRemove }: OwnDetailProps) {
  const engine = useEngine();
  const [errors, setErrors] = useState<Readonly<Partial<Record<Field, string>>>>({});
  const say = (field: Field, sentence: string | undefined) => setErrors((now) => ({ ...now, [field]: sentence }));
  const run = async (field: Field, set: ParamsOf<'material-set'>['set']) => {
    if (line.own === undefined) return;
    const outcome: RunOutcome = await engine.run('material-set', { material: line.own, set });
    say(field, outcome.ok ? undefined : outcome.sentence);
  };
  const setText = (field: 'name' | 'source', text: string) =>
    text === line[field] ? say(field, undefined) : void run(field, { [field]: text });
  const setFigure = (name: FigureName, text: string) => {
    const read = readFigure(name, text);
    if (!read.ok) return say(name, read.sentence);
    if (read.value === line.known[name]) return say(name, undefined);
    void run(name, { values: { [name]: read.value } });
  };
  const setGroup = (group: CuttingGroup | '') =>
    void run('cuttingGroup', { values: { cuttingGroup: group === '' ? undefined : group } });
  return (
    <div className="material-detail">
      <div className="material-fields">
        <SettledField
          label="Name"
          data-field="name"
          value={line.name}
          error={errors.name}
          readOnly={!editable}
          onSettle={(text) => setText('name', text)}
        />
        {figures.map(({ name, label, unitWords }) => (
          <SettledField
            key={name}
            label={label}
            hint={`In ${unitWords}`}
            data-field={name}
            value={figureText(line.known, name) ?? ''}
            placeholder="not known"
            error={errors[name]}
            readOnly={!editable}
            onSettle={(text) => setFigure(name, text)}
          />
        ))}
        <SelectField
          label="Cutting group"
          value={line.known.cuttingGroup ?? ''}
          error={errors.cuttingGroup}
          disabled={!editable}
          options={[
            { value: '', label: 'not known' },
            ...cuttingGroups.map((group) => ({ value: group, label: `${group}  ${groupWords[group]}` })),
          ]}
          onChange={setGroup}
        />
      </div>
      <SettledField
        label="Source"
        data-field="source"
        value={line.source}
        placeholder="A certificate, a maker’s sheet, a bar weighed and measured"
        error={errors.source}
        readOnly={!editable}
        onSettle={(text) => setText('source', text)}
      />
      <div className="material-foot">
        <Users line={line} />
        {editable && (
          <Button look="stop" onClick={onRemove}>
            Remove
          </Button>
        )}
      </div>
    </div>
  );
}

interface TableDetailProps {
  readonly line: MaterialLine;
  readonly editable: boolean;
  readonly onCopy: () => void;
}

/** All that the table has of a material. It is for reading; a copy can be changed. */
export function TableDetail({ line, editable, onCopy }: TableDetailProps) {
  const { known, also, isBehind } = line;
  const group = known.cuttingGroup;
  const facts = [
    ...figures.map(({ name, label }) => [label, figureWords(known, name) ?? 'not known'] as const),
    ['Cutting group', group === undefined ? 'not known' : `${group}, ${groupWords[group]}`] as const,
    ...(also.length > 0 ? [['Also called', also.join(', ')] as const] : []),
    ['Source', line.source] as const,
  ];
  return (
    <div className="material-detail">
      <dl className="material-facts">
        {facts.map(([label, value]) => (
          <div key={label}>
            <dt className="lettering soft">{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <div className="material-foot">
        {isBehind ? (
          <p className="soft grow">The build has a row of its own by this name, which is taken instead.</p>
        ) : (
          <Users line={line} />
        )}
        {editable && <Button onClick={onCopy}>Copy to the Build’s Own</Button>}
      </div>
    </div>
  );
}

function Users({ line: { usedBy } }: { readonly line: MaterialLine }) {
  return (
    <p className="soft grow">
      {usedBy.length === 0 ? 'No part is made of it.' : `Made of it: ${listedNames(usedBy)}.`}
    </p>
  );
}
