import type { StationId } from '../../../../shared/base/ids.ts';
import type { Place } from '../../../../shared/build/amount.ts';
import { axesAcross } from '../../../../shared/build/body-uses.ts';
import { type Fixture, fixtureKinds } from '../../../../shared/build/setup.ts';
import { Button, IconButton } from '../../../kit/button.tsx';
import { ChoiceField, SelectField, SettledField } from '../../../kit/field.tsx';
import { RemoveIcon } from '../../../kit/icons.tsx';
import { AmountField } from '../fields/amount-field.tsx';
import { PlaceField } from '../fields/place-field.tsx';
import type { SetupEdit } from './setup-edit.ts';

const kinds = fixtureKinds.map((kind) => ({ value: kind, label: kind }));

/** What is fixed to the work and goes with it. */
export function FixturesForm({ edit }: { readonly edit: SetupEdit }) {
  const { record, stations } = edit.model;
  const { fixtures, line } = record;
  const along = stations.filter(({ axis }) => axis === line.axis);
  const first = along[0];
  const last = along.at(-1);
  const put = (at: number, fixture: Fixture) =>
    edit.set(`fixtures/${at}`, { fixtures: fixtures.map((one, i) => (i === at ? fixture : one)) });
  const add = () => {
    if (first === undefined || last === undefined) {
      return edit.say(
        'fixtures',
        `A fixture stands on stations along ${line.axis}, and ${edit.model.part} has none. Draw one first.`,
      );
    }
    const fresh: Fixture = {
      name: 'arbor',
      what: 'arbor',
      ends: [
        { station: first.id as StationId, beyond: '' },
        { station: last.id as StationId, beyond: '' },
      ],
      shape: { is: 'round', diameter: { written: '' } },
      material: '',
      mass: '',
    };
    edit.set('fixtures', { fixtures: [...fixtures, fresh] });
  };
  return (
    <section className="setup-block" aria-labelledby="setup-fixtures">
      <h3 id="setup-fixtures" className="lettering">
        Fixed to it
      </h3>
      {edit.error('fixtures') !== undefined && <p className="setup-refused">{edit.error('fixtures')}</p>}
      {fixtures.map((fixture, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: fixtures have no identity of their own, they stand in order
        <FixtureFields key={i} edit={edit} fixture={fixture} at={i} onPut={(next) => put(i, next)} />
      ))}
      {!edit.readOnly && (
        <div className="setup-acts">
          <Button onClick={add}>Fix Something to It</Button>
        </div>
      )}
    </section>
  );
}

interface FixtureFieldsProps {
  readonly edit: SetupEdit;
  readonly fixture: Fixture;
  readonly at: number;
  readonly onPut: (fixture: Fixture) => void;
}

function FixtureFields({ edit, fixture, at, onPut }: FixtureFieldsProps) {
  const { axis } = edit.model.record.line;
  const field = `fixtures/${at}`;
  const end = (i: 0 | 1, place: Place | undefined) => {
    if (place === undefined) return;
    onPut({ ...fixture, ends: i === 0 ? [place, fixture.ends[1]] : [fixture.ends[0], place] });
  };
  const remove = () => edit.set('fixtures', { fixtures: edit.model.record.fixtures.filter((_, i) => i !== at) });
  return (
    <fieldset className="setup-item">
      <legend className="lettering">{fixture.name}</legend>
      {!edit.readOnly && (
        <div className="setup-item-acts">
          <IconButton label={`Take off ${fixture.name}`} icon={<RemoveIcon />} onClick={remove} />
        </div>
      )}
      <div className="setup-fields">
        <SettledField
          label="Name"
          value={fixture.name}
          error={edit.error(`${field}/name`)}
          readOnly={edit.readOnly}
          onSettle={(name) => onPut({ ...fixture, name })}
        />
        <SelectField
          label="What it is"
          value={fixture.what}
          options={kinds}
          disabled={edit.readOnly}
          onChange={(what) => onPut({ ...fixture, what })}
        />
        <PlaceField
          edit={edit}
          label="From"
          field={`${field}/ends/0`}
          axis={axis}
          place={fixture.ends[0]}
          onPlace={(place) => end(0, place)}
        />
        <PlaceField
          edit={edit}
          label="To"
          field={`${field}/ends/1`}
          axis={axis}
          place={fixture.ends[1]}
          onPlace={(place) => end(1, place)}
        />
        <ChoiceField
          label="Shape"
          value={fixture.shape.is}
          disabled={edit.readOnly}
          options={[
            { value: 'round', label: 'Round' },
            { value: 'block', label: 'Block' },
          ]}
          onChange={(is: 'round' | 'block') =>
            onPut({
              ...fixture,
              shape:
                is === 'round'
                  ? { is, diameter: { written: '' } }
                  : {
                      is,
                      across: [
                        ['', ''],
                        ['', ''],
                      ],
                    },
            })
          }
        />
        <ShapeFields edit={edit} fixture={fixture} field={field} onPut={onPut} />
        <SettledField
          label="Material"
          value={fixture.material}
          placeholder="steel"
          error={edit.error(`${field}/material`)}
          readOnly={edit.readOnly}
          onSettle={(material) => onPut({ ...fixture, material })}
        />
        <SettledField
          label="Mass"
          value={fixture.mass}
          placeholder="from its material"
          className="input figure"
          error={edit.error(`${field}/mass`)}
          readOnly={edit.readOnly}
          onSettle={(mass) => onPut({ ...fixture, mass: mass.trim() })}
        />
      </div>
    </fieldset>
  );
}

type ShapeProps = Omit<FixtureFieldsProps, 'at'> & { readonly field: string };

function ShapeFields({ edit, fixture, field, onPut }: ShapeProps) {
  const { shape } = fixture;
  if (shape.is === 'round') {
    return (
      <AmountField
        edit={edit}
        label="Diameter"
        field={`${field}/shape/diameter`}
        amount={shape.diameter}
        onAmount={(diameter) => onPut({ ...fixture, shape: { is: 'round', diameter } })}
      />
    );
  }
  const axes = axesAcross(edit.model.record.line.axis);
  const sides = ['from', 'to'] as const;
  const { across } = shape;
  const put = (i: number, j: number, text: string) => {
    const changed = across.map((pair, k) => (k === i ? pair.map((old, m) => (m === j ? text.trim() : old)) : pair));
    onPut({ ...fixture, shape: { is: 'block', across: changed as unknown as typeof across } });
  };
  return (
    <>
      {across.flatMap((pair, i) =>
        pair.map((text, j) => (
          <SettledField
            key={`${axes[i]} ${sides[j]}`}
            label={`${axes[i]} ${sides[j]}, off the line`}
            value={text}
            className="input figure"
            error={edit.error(`${field}/shape/across/${i}/${j}`)}
            readOnly={edit.readOnly}
            onSettle={(next) => put(i, j, next)}
          />
        )),
      )}
    </>
  );
}
