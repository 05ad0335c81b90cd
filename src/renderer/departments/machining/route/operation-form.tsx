import { useState } from 'react';
import type { OperationId, SetupId } from '../../../../shared/base/ids.ts';
import type { Place } from '../../../../shared/build/amount.ts';
import type { OperationFields } from '../../../../shared/build/commands/operation-add.ts';
import { type Edge, edges, type Operation, type Process, processes } from '../../../../shared/build/operation.ts';
import type { NameOption } from '../../../engine/machining/models.ts';
import type { OperationRow, RouteModel } from '../../../engine/machining/route-models.ts';
import { useEngine, useIsEditable } from '../../../engine/use-engine.ts';
import { SelectField, SettledField } from '../../../kit/field.tsx';
import { AmountField } from '../fields/amount-field.tsx';
import { PlaceField } from '../fields/place-field.tsx';
import type { PlanEdit } from '../fields/plan-edit.ts';
import { NamesListField } from './names-list-field.tsx';

interface OperationFormProps {
  readonly row: OperationRow;
  readonly model: RouteModel;
}

const processOptions = processes.map((process) => ({ value: process, label: process }));
const edgeOptions = edges.map((edge) => ({ value: edge, label: edge }));
const flat: ReadonlySet<Process> = new Set(['mill', 'shape', 'plane', 'grind', 'scrape', 'saw', 'file']);

/** What an operation is: each field is an edit of its own as soon as the writer is done with it. */
export function OperationForm({ row, model }: OperationFormProps) {
  const engine = useEngine();
  const readOnly = !useIsEditable();
  const [errors, setErrors] = useState<Readonly<Record<string, string | undefined>>>({});
  const { record } = row;
  const set = (field: string, fields: OperationFields) => {
    void engine.run('operation-set', { changes: [{ operation: record.id, set: fields }] }).then((outcome) => {
      setErrors((now) => ({ ...now, [field]: outcome.ok ? undefined : outcome.sentence }));
    });
  };
  const edit: PlanEdit = {
    names: { part: model.name, stations: model.stations, sizes: model.sizes },
    readOnly,
    error: (field) => errors[field] ?? row.problems[field],
    say: (field, sentence) => setErrors((now) => ({ ...now, [field]: sentence })),
  };
  const surfaces: readonly NameOption[] = [...model.stations, ...model.sizes];
  const others: readonly NameOption[] = model.rows
    .filter((other) => other.record.id !== record.id)
    .map((other) => ({
      id: other.record.id,
      name: other.record.name,
      aside: `step ${other.step}`,
      axis: undefined,
    }));
  return (
    <div className="setup-form operation-form">
      <section className="setup-block" aria-label="What it is">
        <div className="setup-fields">
          <SettledField
            label="Name"
            value={record.name}
            error={edit.error('name')}
            readOnly={readOnly}
            onSettle={(name) => set('name', { name })}
          />
          <SelectField
            label="Process"
            value={record.process}
            options={processOptions}
            disabled={readOnly}
            onChange={(process) => set('process', { process })}
          />
          <SelectField
            label="Done in"
            value={record.setup ?? ''}
            disabled={readOnly}
            error={edit.error('setup')}
            options={[
              { value: '', label: 'At the bench, or not said' },
              ...model.setups.map(({ id, name }) => ({ value: id as string, label: name })),
            ]}
            onChange={(id) => set('setup', { setup: id === '' ? undefined : (id as SetupId) })}
          />
          <SettledField
            label="Leaves"
            value={record.leaves}
            placeholder="to size"
            className="input figure"
            error={edit.error('leaves')}
            readOnly={readOnly}
            onSettle={(leaves) => set('leaves', { leaves: leaves.trim() })}
          />
        </div>
        <NamesListField
          label="Makes true"
          ids={record.makes}
          options={[...surfaces, ...model.bodies]}
          placeholder="A station, a size or a body"
          hint="What is there, or to size, from now on"
          error={edit.error('makes')}
          readOnly={readOnly}
          onIds={(ids) => set('makes', { makes: ids as Operation['makes'] })}
        />
        <NamesListField
          label="Located by, measured from"
          ids={record.from}
          options={surfaces}
          placeholder="A station or a size"
          hint="Must be true before"
          error={edit.error('from')}
          readOnly={readOnly}
          onIds={(ids) => set('from', { from: ids as Operation['from'] })}
        />
        <NamesListField
          label="After"
          ids={record.after}
          options={others}
          placeholder="Another operation"
          hint="Beyond what it is measured from"
          error={edit.error('after')}
          readOnly={readOnly}
          onIds={(ids) => set('after', { after: ids as readonly OperationId[] as Operation['after'] })}
        />
      </section>
      <CutFields record={record} edit={edit} onSet={set} />
      <section className="setup-block" aria-labelledby="operation-tool">
        <h3 id="operation-tool" className="lettering">
          Tool
        </h3>
        <div className="setup-fields">
          <SelectField
            label="Edge"
            value={record.tool.edge}
            options={edgeOptions}
            disabled={readOnly}
            onChange={(edge: Edge) => set('tool/edge', { tool: { edge } })}
          />
          <AmountField
            edit={edit}
            label="Diameter, or shank"
            field="tool/diameter"
            amount={record.tool.diameter}
            onAmount={(diameter) => set('tool/diameter', { tool: { diameter } })}
          />
          <SettledField
            label="Stands out"
            value={record.tool.overhang}
            placeholder="not said"
            className="input figure"
            error={edit.error('tool/overhang')}
            readOnly={readOnly}
            onSettle={(overhang) => set('tool/overhang', { tool: { overhang: overhang.trim() } })}
          />
          <SettledField
            label="Teeth"
            value={String(record.tool.teeth)}
            className="input figure"
            error={edit.error('tool/teeth')}
            readOnly={readOnly}
            onSettle={(text) => {
              const teeth = Number(text);
              if (!Number.isInteger(teeth) || teeth < 1 || teeth > 200)
                return edit.say('tool/teeth', 'A whole number from 1 to 200.');
              edit.say('tool/teeth', undefined);
              set('tool/teeth', { tool: { teeth } });
            }}
          />
          <SettledField
            label="Angle of the edge"
            value={record.tool.angle}
            placeholder="usual"
            className="input figure"
            error={edit.error('tool/angle')}
            readOnly={readOnly}
            onSettle={(angle) => set('tool/angle', { tool: { angle: angle.trim() } })}
          />
        </div>
      </section>
      <Chosen row={row} edit={edit} onSet={set} />
      <section className="setup-block" aria-label="Note">
        <SettledField
          label="Note"
          value={record.note}
          lines={2}
          className="input"
          error={edit.error('note')}
          readOnly={readOnly}
          onSettle={(note) => set('note', { note })}
        />
      </section>
    </div>
  );
}

interface BlockProps {
  readonly edit: PlanEdit;
  readonly onSet: (field: string, fields: OperationFields) => void;
}

/** Where the edge travels: kept when both ends are said. */
function CutFields({ record, edit, onSet }: BlockProps & { readonly record: Operation }) {
  const { cut, process } = record;
  const isFlat = flat.has(process);
  const ends = (at: 0 | 1, place: Place | undefined) => {
    const key = `cut/ends/${at}`;
    if (place === undefined) return onSet(key, { cut: undefined });
    const other = cut?.ends[1 - at] ?? place;
    const rest = { diameter: cut?.diameter ?? { written: '' }, inner: cut?.inner ?? { written: '' } };
    onSet(key, { cut: { ...rest, ends: at === 0 ? [place, other] : [other, place] } });
  };
  return (
    <section className="setup-block" aria-labelledby="operation-cut">
      <h3 id="operation-cut" className="lettering">
        Where the edge travels
      </h3>
      <div className="setup-fields">
        <PlaceField
          edit={edit}
          label="From"
          field="cut/ends/0"
          axis={undefined}
          place={cut?.ends[0]}
          onPlace={(place) => ends(0, place)}
        />
        <PlaceField
          edit={edit}
          label="To"
          field="cut/ends/1"
          axis={undefined}
          place={cut?.ends[1]}
          onPlace={(place) => ends(1, place)}
        />
        {cut !== undefined && (
          <>
            <AmountField
              edit={edit}
              label={isFlat ? 'Breadth' : 'Diameter'}
              field="cut/diameter"
              amount={cut.diameter}
              onAmount={(diameter) => onSet('cut/diameter', { cut: { ...cut, diameter } })}
            />
            {!isFlat && (
              <AmountField
                edit={edit}
                label="Inner diameter"
                field="cut/inner"
                amount={cut.inner}
                hint="Nothing: to the centre"
                onAmount={(inner) => onSet('cut/inner', { cut: { ...cut, inner } })}
              />
            )}
          </>
        )}
      </div>
    </section>
  );
}

const chosenFields: readonly (readonly [key: keyof Operation['chosen'], label: string])[] = [
  ['speed', 'Speed'],
  ['rpm', 'Turns'],
  ['feed', 'Feed'],
  ['depth', 'Depth of cut'],
  ['minutes', 'Minutes'],
];

/** What the writer chooses holds against the tables; in an empty field stands what they give. */
function Chosen({ row, edit, onSet }: BlockProps & { readonly row: OperationRow }) {
  return (
    <section className="setup-block" aria-labelledby="operation-chosen">
      <h3 id="operation-chosen" className="lettering">
        Chosen by you
      </h3>
      <div className="setup-fields">
        {chosenFields.map(([key, label]) => (
          <SettledField
            key={key}
            label={label}
            value={row.record.chosen[key]}
            placeholder={row.proposed[key] ?? 'not known'}
            className="input figure"
            error={edit.error(`chosen/${key}`)}
            readOnly={edit.readOnly}
            onSettle={(text) => onSet(`chosen/${key}`, { chosen: { [key]: text.trim() } })}
          />
        ))}
      </div>
    </section>
  );
}
