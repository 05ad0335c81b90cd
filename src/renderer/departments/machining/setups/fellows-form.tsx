import { useMemo, useState } from 'react';
import type { PartId, StationId } from '../../../../shared/base/ids.ts';
import type { Setup } from '../../../../shared/build/setup.ts';
import { type Axis, axes } from '../../../../shared/build/station.ts';
import type { NameOption } from '../../../engine/machining/models.ts';
import { useEngine, useView } from '../../../engine/use-engine.ts';
import { Button, IconButton } from '../../../kit/button.tsx';
import { SelectField } from '../../../kit/field.tsx';
import { RemoveIcon } from '../../../kit/icons.tsx';
import { NameField } from '../fields/name-field.tsx';
import { nameOf, optionNamed } from '../fields/plan-edit.ts';
import type { SetupEdit } from './setup-edit.ts';

type Fellow = Setup['fellows'][number];
type Signed = Fellow['turn'][number];
type Pair = Fellow['meets'][number];

const signed: readonly Signed[] = ['+X', '-X', '+Y', '-Y', '+Z', '-Z'];
const signedOptions = signed.map((value) => ({ value, label: value.replace('-', '−') }));

/** Other parts that are held together with the first. */
export function FellowsForm({ edit }: { readonly edit: SetupEdit }) {
  const { record, parts } = edit.model;
  const { fellows } = record;
  const others = parts.filter(({ id }) => id !== record.part && !fellows.some(({ part }) => part === id));
  const set = (at: number, next: Fellow | undefined) =>
    edit.set(`fellows/${at}`, {
      fellows: fellows.flatMap((one, i) => (i !== at ? [one] : next === undefined ? [] : [next])),
    });
  return (
    <section className="setup-block" aria-labelledby="setup-fellows">
      <h3 id="setup-fellows" className="lettering">
        Held together with
      </h3>
      {fellows.map((fellow, i) => (
        <FellowFields key={fellow.part} edit={edit} fellow={fellow} at={i} onSet={(next) => set(i, next)} />
      ))}
      {!edit.readOnly && others.length > 0 && <AddFellow edit={edit} others={others} />}
    </section>
  );
}

function AddFellow({ edit, others }: { readonly edit: SetupEdit; readonly others: readonly NameOption[] }) {
  const engine = useEngine();
  const [chosen, setChosen] = useState('');
  const add = async () => {
    const part = others.find(({ id }) => id === chosen);
    if (part === undefined) return edit.say('fellows', 'Choose the part first.');
    const its = (await engine.ask('stations', { part: part.id as PartId })) ?? [];
    const meets = axes.map((axis) => [firstAlong(edit.model.stations, axis), firstAlong(its, axis)] as const);
    const bare = axes.find((_, i) => meets[i]?.[0] === undefined || meets[i]?.[1] === undefined);
    if (bare !== undefined) {
      const who = meets[axes.indexOf(bare)]?.[0] === undefined ? edit.model.part : part.name;
      return edit.say('fellows', `${who} has no station along ${bare} where the two could meet. Draw one first.`);
    }
    const fellow: Fellow = {
      part: part.id as PartId,
      state: { is: 'as cast' },
      turn: ['+X', '+Y', '+Z'],
      meets: meets as unknown as Fellow['meets'],
    };
    setChosen('');
    edit.set('fellows', { fellows: [...edit.model.record.fellows, fellow] });
  };
  return (
    <div className="setup-fields">
      <SelectField
        label="Another part"
        value={chosen}
        error={edit.error('fellows')}
        options={[{ value: '', label: 'choose' }, ...others.map(({ id, name }) => ({ value: id, label: name }))]}
        onChange={setChosen}
      />
      <div className="setup-acts">
        <Button disabled={chosen === ''} onClick={() => void add()}>
          Hold It Too
        </Button>
      </div>
    </div>
  );
}

const firstAlong = (options: readonly NameOption[], axis: Axis): StationId | undefined =>
  options.find((option) => option.axis === axis)?.id as StationId | undefined;

interface FellowFieldsProps {
  readonly edit: SetupEdit;
  readonly fellow: Fellow;
  readonly at: number;
  /** Undefined takes it out. */
  readonly onSet: (fellow: Fellow | undefined) => void;
}

/** How another part lies: which way its axes run, and which of its stations meets which. */
function FellowFields({ edit, fellow, at, onSet }: FellowFieldsProps) {
  const { model } = edit;
  const sheet = useView('part', { part: fellow.part });
  const field = `fellows/${at}`;
  const name = nameOf(model.parts, fellow.part);
  const its = useMemo(
    () =>
      (sheet?.stations ?? []).map(
        ({ record, at: place }): NameOption => ({
          id: record.id,
          name: record.name,
          aside: place ?? '',
          axis: record.axis,
        }),
      ),
    [sheet?.stations],
  );
  const meet = (i: number, j: 0 | 1, text: string) => {
    const key = `${field}/meets/${i}/${j}`;
    const axis = j === 0 ? axes[i] : alongOf(fellow, axes[i]!);
    const found = optionNamed(j === 0 ? model.stations : its, text, axis);
    if (found === undefined) {
      const whose = j === 0 ? model.part : name;
      return edit.say(
        key,
        `No station of ${whose} along ${axis} is called "${text.trim()}". Choose one from the list.`,
      );
    }
    edit.say(key, undefined);
    const meets = fellow.meets.map((pair, k) =>
      k === i ? (pair.map((old, m) => (m === j ? found.id : old)) as unknown as Pair) : pair,
    );
    onSet({ ...fellow, meets: meets as unknown as Fellow['meets'] });
  };
  const turn = (i: number, to: Signed) => {
    const next = fellow.turn.map((old, k) => (k === i ? to : old)) as unknown as Fellow['turn'];
    const named = axes.find((axis) => !next.some((one) => one.endsWith(axis)));
    if (named === undefined) return onSet({ ...fellow, turn: next });
    // Two axes along one line: the other takes the place that has become free, so that one choice is enough.
    const taken = next.findIndex((one, k) => k !== i && one.endsWith(to.slice(1)));
    const mended = next.map((one, k) => (k === taken ? (`${one[0]}${named}` as Signed) : one));
    onSet({ ...fellow, turn: mended as unknown as Fellow['turn'] });
  };
  return (
    <fieldset className="setup-item">
      <legend className="lettering">{name}</legend>
      {!edit.readOnly && (
        <div className="setup-item-acts">
          <IconButton label={`Let go of ${name}`} icon={<RemoveIcon />} onClick={() => onSet(undefined)} />
        </div>
      )}
      <div className="setup-fields">
        <SelectField
          label="State"
          value={fellow.state.is === 'finished' ? 'finished' : 'as cast'}
          disabled={edit.readOnly}
          options={[
            { value: 'as cast', label: 'As cast' },
            { value: 'finished', label: 'Finished' },
          ]}
          onChange={(is: 'as cast' | 'finished') => onSet({ ...fellow, state: { is } })}
        />
        {axes.map((axis, i) => (
          <SelectField
            key={axis}
            label={`Its ${axis} runs along`}
            value={fellow.turn[i]!}
            disabled={edit.readOnly}
            options={signedOptions}
            error={i === 0 ? edit.error(`${field}/turn`) : undefined}
            onChange={(to) => turn(i, to)}
          />
        ))}
        {axes.map((axis, i) => (
          <div key={axis} className="setup-meets">
            <NameField
              label={`Along ${axis}: ${model.part}`}
              kept={nameOf(model.stations, fellow.meets[i]?.[0])}
              options={model.stations.filter((option) => option.axis === axis)}
              placeholder="Station"
              error={edit.error(`${field}/meets/${i}/0`)}
              readOnly={edit.readOnly}
              onSettle={(text) => meet(i, 0, text)}
            />
            <NameField
              label={`meets ${name}`}
              kept={nameOf(its, fellow.meets[i]?.[1])}
              options={its.filter((option) => option.axis === alongOf(fellow, axis))}
              placeholder="Station"
              error={edit.error(`${field}/meets/${i}/1`)}
              readOnly={edit.readOnly}
              onSettle={(text) => meet(i, 1, text)}
            />
          </div>
        ))}
      </div>
    </fieldset>
  );
}

/** Which axis of the other part lies along one of the first. */
const alongOf = ({ turn }: Fellow, axis: Axis): Axis | undefined => axes[turn.findIndex((one) => one[1] === axis)];
