import type { Place } from '../../../../shared/build/amount.ts';
import type { Holding, HoldingWay } from '../../../../shared/build/setup.ts';
import { SelectField } from '../../../kit/field.tsx';
import { AmountField } from '../fields/amount-field.tsx';
import { PlaceField } from '../fields/place-field.tsx';
import type { SetupEdit } from './setup-edit.ts';

const ways: readonly { readonly value: HoldingWay; readonly label: string }[] = [
  { value: 'between centres', label: 'Between centres' },
  { value: 'three-jaw chuck', label: 'Three-jaw chuck' },
  { value: 'four-jaw chuck', label: 'Four-jaw chuck' },
  { value: 'face plate', label: 'Face plate' },
  { value: 'steady', label: 'Fixed steady' },
  { value: 'vise', label: 'Vise' },
  { value: 'clamped to the table', label: 'Clamped to the table' },
];

/** A way of holding with nothing said of it yet. */
function freshHolding(as: HoldingWay): Holding {
  switch (as) {
    case 'between centres':
      return { as };
    case 'three-jaw chuck':
    case 'four-jaw chuck':
      return { as, diameter: { written: '' }, inside: false, tailCentre: false };
    case 'face plate':
      return { as, tailCentre: false };
    case 'steady':
      return { as, diameter: { written: '' } };
    case 'vise':
      return { as, depth: { written: '' } };
    case 'clamped to the table':
      return { as };
  }
}

/** Keeps of the old way what the new one asks for too. */
function changedTo(as: HoldingWay, from: Holding): Holding {
  const fresh = freshHolding(as);
  const jaws = (way: Holding) => way.as === 'three-jaw chuck' || way.as === 'four-jaw chuck';
  if (jaws(fresh) && jaws(from)) return { ...from, as } as Holding;
  if ('tailCentre' in fresh && 'tailCentre' in from) return { ...fresh, tailCentre: from.tailCentre };
  if ('seat' in from && (as === 'face plate' || as === 'clamped to the table') && from.seat !== undefined)
    return { ...fresh, seat: from.seat } as Holding;
  return fresh;
}

/** How the work is held, with what that way must know. */
export function HoldingFields({ edit }: { readonly edit: SetupEdit }) {
  const { holding, line } = edit.model.record;
  const set = (next: Holding) => edit.set('holding', { holding: next });
  return (
    <>
      <SelectField
        label="Held"
        value={holding.as}
        options={ways}
        disabled={edit.readOnly}
        error={edit.error('holding')}
        onChange={(as) => set(changedTo(as, holding))}
      />
      {(holding.as === 'three-jaw chuck' || holding.as === 'four-jaw chuck') && (
        <>
          <AmountField
            edit={edit}
            label="Diameter gripped"
            field="holding/diameter"
            amount={holding.diameter}
            onAmount={(diameter) => set({ ...holding, diameter })}
          />
          <Ends
            edit={edit}
            label="Jaws close"
            axis={line.axis}
            ends={holding.ends}
            onEnds={(ends) => set(withEnds(holding, ends))}
          />
          <Tick
            label="Jaws open in a bore"
            checked={holding.inside}
            disabled={edit.readOnly}
            onChange={(inside) => set({ ...holding, inside })}
          />
          <Tick
            label="Centre in the tailstock"
            checked={holding.tailCentre}
            disabled={edit.readOnly}
            onChange={(tailCentre) => set({ ...holding, tailCentre })}
          />
        </>
      )}
      {holding.as === 'face plate' && (
        <>
          <PlaceField
            edit={edit}
            label="Against the plate"
            field="holding/seat"
            axis={line.axis}
            place={holding.seat}
            onPlace={(seat) => set(withPlace(holding, 'seat', seat))}
          />
          <Tick
            label="Centre in the tailstock"
            checked={holding.tailCentre}
            disabled={edit.readOnly}
            onChange={(tailCentre) => set({ ...holding, tailCentre })}
          />
        </>
      )}
      {holding.as === 'steady' && (
        <>
          <PlaceField
            edit={edit}
            label="Steady at"
            field="holding/at"
            axis={line.axis}
            place={holding.at}
            onPlace={(at) => set(withPlace(holding, 'at', at))}
          />
          <AmountField
            edit={edit}
            label="Diameter it runs on"
            field="holding/diameter"
            amount={holding.diameter}
            onAmount={(diameter) => set({ ...holding, diameter })}
          />
        </>
      )}
      {holding.as === 'vise' && (
        <>
          <Ends
            edit={edit}
            label="Jaws close"
            axis={undefined}
            ends={holding.ends}
            onEnds={(ends) => set(withEnds(holding, ends))}
          />
          <AmountField
            edit={edit}
            label="Depth in the jaws"
            field="holding/depth"
            amount={holding.depth}
            onAmount={(depth) => set({ ...holding, depth })}
          />
        </>
      )}
      {holding.as === 'clamped to the table' && (
        <PlaceField
          edit={edit}
          label="On the table"
          field="holding/seat"
          axis={undefined}
          place={holding.seat}
          onPlace={(seat) => set(withPlace(holding, 'seat', seat))}
        />
      )}
    </>
  );
}

type Ended = Extract<Holding, { ends?: unknown }>;
const withEnds = (holding: Ended, ends: readonly [Place, Place] | undefined): Holding => {
  const { ends: _, ...rest } = holding;
  return (ends === undefined ? rest : { ...rest, ends }) as Holding;
};

function withPlace(holding: Holding, key: 'seat' | 'at', place: Place | undefined): Holding {
  const { [key]: _, ...rest } = holding as Holding & Partial<Record<'seat' | 'at', Place>>;
  return (place === undefined ? rest : { ...rest, [key]: place }) as Holding;
}

interface EndsProps {
  readonly edit: SetupEdit;
  readonly label: string;
  readonly axis: SetupEdit['model']['record']['line']['axis'] | undefined;
  readonly ends: readonly [Place, Place] | undefined;
  readonly onEnds: (ends: readonly [Place, Place] | undefined) => void;
}

/** Two places, kept when both are said. */
function Ends({ edit, label, axis, ends, onEnds }: EndsProps) {
  // One place alone cannot be kept: it stands for both until the other is said.
  const change = (at: 0 | 1, place: Place | undefined) => {
    if (place === undefined) return onEnds(undefined);
    const other = ends?.[1 - at] ?? place;
    onEnds(at === 0 ? [place, other] : [other, place]);
  };
  return (
    <>
      <PlaceField
        edit={edit}
        label={`${label} from`}
        field="holding/ends/0"
        axis={axis}
        place={ends?.[0]}
        onPlace={(place) => change(0, place)}
      />
      <PlaceField
        edit={edit}
        label={`${label} to`}
        field="holding/ends/1"
        axis={axis}
        place={ends?.[1]}
        onPlace={(place) => change(1, place)}
      />
    </>
  );
}

interface TickProps {
  readonly label: string;
  readonly checked: boolean;
  readonly disabled: boolean;
  readonly onChange: (checked: boolean) => void;
}

function Tick({ label, checked, disabled, onChange }: TickProps) {
  return (
    <label className="tick-field">
      <input
        type="checkbox"
        checked={checked}
        disabled={disabled}
        onChange={(event) => onChange(event.target.checked)}
      />
      {label}
    </label>
  );
}
