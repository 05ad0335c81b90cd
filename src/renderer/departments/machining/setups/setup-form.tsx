import type { MachineId, OperationId } from '../../../../shared/base/ids.ts';
import { axesAcross } from '../../../../shared/build/body-uses.ts';
import type { PartCondition, Setup } from '../../../../shared/build/setup.ts';
import { type Axis, axes } from '../../../../shared/build/station.ts';
import type { SetupModel } from '../../../engine/machining/models.ts';
import { ChoiceField, SelectField, SettledField } from '../../../kit/field.tsx';
import { NameField } from '../fields/name-field.tsx';
import { nameOf, stationNamed } from '../fields/plan-edit.ts';
import { FellowsForm } from './fellows-form.tsx';
import { FixturesForm } from './fixtures-form.tsx';
import { HoldingFields } from './holding-fields.tsx';
import { useSetupEdit } from './setup-edit.ts';

const axisOptions = axes.map((axis) => ({ value: axis, label: axis }));

/** What a set-up is: each field is an edit of its own as soon as the writer is done with it. */
export function SetupForm({ model }: { readonly model: SetupModel }) {
  const edit = useSetupEdit(model);
  const { record, stations, machines } = model;
  const { line, headEnd } = record;
  const across = axesAcross(line.axis);
  const state = stateValue(record.state);
  const setThrough = (at: 0 | 1, text: string) => {
    const field = `line/through/${at}`;
    if (text.trim() === '') {
      edit.say(field, undefined);
      return edit.set('line', { line: { axis: line.axis } });
    }
    const station = stationNamed(edit, text, across[at]);
    if (typeof station !== 'string') return edit.say(field, station.sentence);
    edit.say(field, undefined);
    const other = line.through?.[1 - at] ?? (edit.half?.at === 1 - at ? edit.half.station : undefined);
    if (other === undefined) return edit.setHalf({ at, station });
    edit.set(field, { line: { axis: line.axis, through: at === 0 ? [station, other] : [other, station] } });
  };
  return (
    <div className="setup-form">
      <section className="setup-block" aria-labelledby="setup-what">
        <h3 id="setup-what" className="lettering">
          What and where
        </h3>
        <div className="setup-fields">
          <SettledField
            label="Name"
            value={record.name}
            error={edit.error('name')}
            readOnly={edit.readOnly}
            onSettle={(name) => edit.set('name', { name })}
          />
          <SelectField
            label="Machine"
            value={record.machine ?? ''}
            disabled={edit.readOnly}
            error={edit.error('machine')}
            options={[
              { value: '', label: 'not said yet' },
              ...machines.map(({ id, name }) => ({ value: id as string, label: name })),
            ]}
            onChange={(id) => edit.set('machine', { machine: id === '' ? undefined : (id as MachineId) })}
          />
          <SelectField
            label="State of the part"
            value={state}
            disabled={edit.readOnly}
            error={edit.error('state/operation')}
            options={[
              { value: 'as cast', label: 'As cast' },
              ...model.operations.map(({ id, name }) => ({ value: id, label: `After ${name}` })),
              { value: 'finished', label: 'Finished' },
            ]}
            onChange={(value) => edit.set('state', { state: stateOf(value) })}
          />
          <SettledField
            label="Stock on it"
            hint="On every surface still to be machined"
            value={record.allowance}
            placeholder="as drawn"
            className="input figure"
            error={edit.error('allowance')}
            readOnly={edit.readOnly}
            onSettle={(allowance) => edit.set('allowance', { allowance: allowance.trim() })}
          />
        </div>
      </section>
      <section className="setup-block" aria-labelledby="setup-line">
        <h3 id="setup-line" className="lettering">
          Line it turns about or moves along
        </h3>
        <div className="setup-fields">
          <ChoiceField
            label="Along"
            value={line.axis}
            options={axisOptions}
            disabled={edit.readOnly}
            onChange={(axis: Axis) => edit.set('line', { line: { axis } })}
          />
          {across.map((axis, i) => (
            <NameField
              key={axis}
              label={`Through, along ${axis}`}
              kept={nameOf(stations, line.through?.[i] ?? (edit.half?.at === i ? edit.half.station : undefined))}
              options={stations.filter((option) => option.axis === axis)}
              placeholder="Station"
              hint={edit.half?.at === i ? `Say where along ${across[1 - i]} too: the line needs both` : undefined}
              error={edit.error(`line/through/${i}`)}
              readOnly={edit.readOnly}
              onSettle={(text) => setThrough(i as 0 | 1, text)}
            />
          ))}
          <ChoiceField
            label="To the headstock"
            value={headEnd}
            disabled={edit.readOnly}
            options={[
              { value: 'low', label: `Low ${line.axis} end` },
              { value: 'high', label: `High ${line.axis} end` },
            ]}
            onChange={(end: Setup['headEnd']) => edit.set('headEnd', { headEnd: end })}
          />
        </div>
      </section>
      <section className="setup-block" aria-labelledby="setup-holding">
        <h3 id="setup-holding" className="lettering">
          Holding
        </h3>
        <div className="setup-fields">
          <HoldingFields edit={edit} />
        </div>
      </section>
      <FixturesForm edit={edit} />
      <FellowsForm edit={edit} />
      <section className="setup-block" aria-labelledby="setup-more">
        <h3 id="setup-more" className="lettering">
          For the bench
        </h3>
        <div className="setup-fields">
          <SettledField
            label="Minutes to set up"
            value={record.minutes}
            placeholder="usual for the holding"
            className="input figure"
            error={edit.error('minutes')}
            readOnly={edit.readOnly}
            onSettle={(minutes) => edit.set('minutes', { minutes: minutes.trim() })}
          />
        </div>
        <SettledField
          label="Note"
          value={record.note}
          lines={2}
          className="input"
          error={edit.error('note')}
          readOnly={edit.readOnly}
          onSettle={(note) => edit.set('note', { note })}
        />
      </section>
    </div>
  );
}

const stateValue = (state: PartCondition): string => (state.is === 'after' ? state.operation : state.is);

const stateOf = (value: string): PartCondition =>
  value === 'as cast' || value === 'finished' ? { is: value } : { is: 'after', operation: value as OperationId };
