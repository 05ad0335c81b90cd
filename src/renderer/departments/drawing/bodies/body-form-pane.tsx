import { useDeferredValue, useEffect, useMemo, useState } from 'react';
import type { Body, Repeat, ShapeType } from '../../../../shared/build/body.ts';
import { type Axis, axes } from '../../../../shared/build/station.ts';
import { goTo } from '../../../app/place.ts';
import type { BodyPreview } from '../../../engine/asks/body-preview.ts';
import { useEngine } from '../../../engine/use-engine.ts';
import type { PartSheet } from '../../../engine/views/part.ts';
import { Button, IconButton } from '../../../kit/button.tsx';
import { ComboField } from '../../../kit/combo-field.tsx';
import { ChoiceField, SelectField, TextField } from '../../../kit/field.tsx';
import { RemoveIcon } from '../../../kit/icons.tsx';
import { type BodyForm, fieldsOf, knownOf, newForm, withoutCorner, withoutRepeat } from './body-form.ts';
import { labelOf, meaningOf, placeholderOf, shapeNames } from './field-words.ts';
import { type FieldGroup, groupsOf } from './form-groups.ts';
import { PreviewList } from './preview-list.tsx';
import { draftOf } from './read-form.ts';

interface BodyFormPaneProps {
  readonly sheet: PartSheet;
  /** The body that is changed; undefined: a new one. */
  readonly body: Body | undefined;
  readonly start: BodyForm;
  readonly onPreview: (preview: BodyPreview | undefined) => void;
  readonly onDone: () => void;
}

const finishes: readonly { readonly value: Body['finish']; readonly label: string }[] = [
  { value: 'as cast', label: 'As cast' },
  { value: 'cored', label: 'Cored' },
  { value: 'machined', label: 'Machined' },
];

const axisOptions = axes.map((axis) => ({ value: axis, label: axis }));

/** Draws a body, or changes one: each end is a station or a new one, each size a dimension or a new value. */
export function BodyFormPane({ sheet, body, start, onPreview, onDone }: BodyFormPaneProps) {
  const engine = useEngine();
  const [form, setForm] = useState(start);
  const [refused, setRefused] = useState<string>();
  const known = useMemo(() => knownOf(sheet), [sheet]);
  const settled = useDeferredValue(form);
  const draft = useMemo(
    () => draftOf(settled, sheet.part.id, known, body?.id),
    [settled, sheet.part.id, known, body?.id],
  );
  const [preview, setPreview] = useState<BodyPreview>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the sheet stands for the drawing that the draft is tried on
  useEffect(() => {
    let late = false;
    void engine.ask('body-preview', draft).then((answer) => {
      if (late) return;
      setPreview(answer);
      onPreview(answer);
    });
    return () => {
      late = true;
    };
  }, [engine, draft, sheet, onPreview]);
  useEffect(() => () => onPreview(undefined), [onPreview]);

  const change = (part: Partial<BodyForm>) => {
    setRefused(undefined);
    setForm((now) => ({ ...now, ...part }));
  };
  const setText = (field: string, text: string) => {
    setRefused(undefined);
    setForm((now) => ({ ...now, texts: { ...now.texts, [field]: text } }));
  };
  const setType = (type: ShapeType) => {
    const fresh = newForm(type);
    setForm((now) => ({
      ...fresh,
      axis: now.axis,
      name: now.name,
      note: now.note,
      texts: now.texts,
      repeats: now.repeats,
    }));
  };
  const accept = async () => {
    const { command, params } = draftOf(form, sheet.part.id, known, body?.id);
    const outcome = command === 'body-sketch' ? await engine.run(command, params) : await engine.run(command, params);
    if (!outcome.ok) return setRefused(outcome.sentence);
    const made = outcome.added.find((id) => id.startsWith('body:'));
    goTo({ subject: body?.id ?? made });
    onDone();
  };
  const groups = groupsOf(form, fieldsOf(form));
  const hasAxis = form.type !== 'block' && form.type !== 'imported';
  const unreadable = preview?.made.find((line) => line.unreadable === true);
  return (
    <form
      className="body-form"
      aria-label={body === undefined ? 'New body' : `Body ${body.name}`}
      onSubmit={(event) => {
        event.preventDefault();
        void accept();
      }}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.defaultPrevented) return;
        event.preventDefault();
        onDone();
      }}
    >
      <div className="body-fields">
        <div className="form-row">
          {form.type === 'imported' ? null : (
            <SelectField
              label="Shape"
              value={form.type}
              options={shapeNames.map(([value, label]) => ({ value, label }))}
              onChange={setType}
            />
          )}
          <TextField
            label="Name"
            value={form.name}
            placeholder={`called after its shape`}
            onChange={(name) => change({ name })}
          />
        </div>
        <div className="body-choices">
          {form.type !== 'hole' && (
            <ChoiceField
              label="It"
              value={form.adds ? 'adds' : 'takes'}
              options={[
                { value: 'adds', label: 'Adds' },
                { value: 'takes', label: 'Takes away' },
              ]}
              onChange={(value) => change({ adds: value === 'adds' })}
            />
          )}
          <ChoiceField
            label="Finish"
            value={form.finish}
            options={finishes}
            onChange={(finish) => change({ finish })}
          />
          {hasAxis && (
            <ChoiceField label="Axis" value={form.axis} options={axisOptions} onChange={(axis) => change({ axis })} />
          )}
        </div>
        {groups.map((group) => (
          <Group key={group.key} group={group} form={form} onForm={setForm}>
            {group.fields.map((one) => (
              <ComboField
                key={one.field}
                label={labelOf(one)}
                value={form.texts[one.field] ?? ''}
                options={optionsFor(one, known)}
                placeholder={placeholderOf(one)}
                hint={meaningOf(one, form, known)}
                onChange={(text) => setText(one.field, text)}
              />
            ))}
          </Group>
        ))}
        <Extras form={form} change={change} />
      </div>
      <div className="body-made">
        <PreviewList preview={preview} refused={refused} isNew={body === undefined} />
        <div className="body-acts">
          <Button look="main" type="submit" disabled={preview?.refusal !== undefined || unreadable !== undefined}>
            {body === undefined ? 'Draw It' : 'Change It'}
          </Button>
          <Button onClick={onDone}>Cancel</Button>
        </div>
      </div>
    </form>
  );
}

type Known = ReturnType<typeof knownOf>;

function optionsFor(one: ReturnType<typeof fieldsOf>[number], known: Known) {
  return one.is === 'place'
    ? known.stations
        .filter(({ axis }) => axis === one.axis)
        .map(({ name, aside }) => ({ text: name, aside: aside || 'not placed' }))
    : known.sizes.filter(({ roles }) => roles.includes(one.role)).map(({ name, aside }) => ({ text: name, aside }));
}

interface GroupProps {
  readonly group: FieldGroup;
  readonly form: BodyForm;
  readonly onForm: (change: (now: BodyForm) => BodyForm) => void;
  readonly children: React.ReactNode;
}

function Group({ group, form, onForm, children }: GroupProps) {
  const { corner, repeat, title } = group;
  const least = 3;
  return (
    <fieldset className="body-group">
      <legend className="lettering soft">{title}</legend>
      <div className="body-group-fields">{children}</div>
      {corner !== undefined && form.corners > least && (
        <IconButton
          label={`Remove ${title.toLowerCase()}`}
          icon={<RemoveIcon />}
          onClick={() => onForm((now) => withoutCorner(now, corner))}
        />
      )}
      {repeat !== undefined && (
        <IconButton
          label={`Remove: ${title}`}
          icon={<RemoveIcon />}
          onClick={() => onForm((now) => withoutRepeat(now, repeat))}
        />
      )}
    </fieldset>
  );
}

const MOST_REPEATS = 4;

/** What a form may have besides its plain fields: more corners, a wider mouth, copies. */
function Extras({ form, change }: { readonly form: BodyForm; readonly change: (part: Partial<BodyForm>) => void }) {
  const addRepeat = (type: Repeat['type'], axis: Axis) => change({ repeats: [...form.repeats, { type, axis }] });
  const hasCorners = form.type === 'prism' || form.type === 'rib' || form.type === 'revolved';
  return (
    <div className="body-extras">
      {hasCorners && (
        <Button onClick={() => change({ corners: form.corners + 1 })}>
          {form.type === 'revolved' ? 'Add a Shoulder' : 'Add a Corner'}
        </Button>
      )}
      {form.type === 'hole' && (
        <>
          <Button pressed={form.counterbore} onClick={() => change({ counterbore: !form.counterbore })}>
            Counterbore
          </Button>
          <Button pressed={form.countersink} onClick={() => change({ countersink: !form.countersink })}>
            Countersink
          </Button>
        </>
      )}
      {form.type === 'fillet' && <Quadrant form={form} change={change} />}
      {form.type === 'imported' && <TurnFields form={form} change={change} />}
      {form.repeats.length < MOST_REPEATS && (
        <>
          <Button onClick={() => addRepeat('circle', form.axis)}>Round a Circle</Button>
          {axes.map((axis) => (
            <Button key={`row ${axis}`} onClick={() => addRepeat('row', axis)}>
              Row along {axis}
            </Button>
          ))}
          {axes.map((axis) => (
            <Button key={`mirror ${axis}`} onClick={() => addRepeat('mirror', axis)}>
              Mirror along {axis}
            </Button>
          ))}
        </>
      )}
    </div>
  );
}

interface ExtraProps {
  readonly form: BodyForm;
  readonly change: (part: Partial<BodyForm>) => void;
}

const quadrants = ['+ +', '− +', '− −', '+ −'] as const;
const signOf = (sign: string): 1 | -1 => (sign === '+' ? 1 : -1);

function Quadrant({ form, change }: ExtraProps) {
  const [u, v] = axes.filter((axis) => axis !== form.axis);
  const value =
    quadrants.find((one) => signOf(one[0]!) === form.quadrant[0] && signOf(one[2]!) === form.quadrant[1]) ?? '+ +';
  return (
    <ChoiceField
      label={`The arc lies on this side along ${u} ${v}`}
      value={value}
      options={quadrants.map((one) => ({ value: one, label: one }))}
      onChange={(one) => change({ quadrant: [signOf(one[0]!), signOf(one[2]!)] })}
    />
  );
}

const turns = ['+X', '-X', '+Y', '-Y', '+Z', '-Z'] as const;

function TurnFields({ form, change }: ExtraProps) {
  return (
    <div className="form-row">
      {axes.map((axis, i) => (
        <SelectField
          key={axis}
          label={`Its ${axis} is`}
          value={form.turn[i]!}
          options={turns.map((turn) => ({ value: turn, label: turn }))}
          onChange={(turn) => change({ turn: form.turn.with(i, turn) as unknown as BodyForm['turn'] })}
        />
      ))}
    </div>
  );
}
