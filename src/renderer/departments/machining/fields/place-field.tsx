import type { Place } from '../../../../shared/build/amount.ts';
import type { Axis } from '../../../../shared/build/station.ts';
import { SettledField } from '../../../kit/field.tsx';
import { NameField } from './name-field.tsx';
import { nameOf, type PlanEdit, stationNamed } from './plan-edit.ts';

interface PlaceFieldProps {
  readonly edit: PlanEdit;
  readonly label: string;
  /** Where the place stands in the record. */
  readonly field: string;
  /** The axis that it lies along; undefined: any. */
  readonly axis: Axis | undefined;
  readonly place: Place | undefined;
  /** Undefined takes it away, where it may be left out. */
  readonly onPlace: (place: Place | undefined) => void;
}

/** A station, and how far beyond it. */
export function PlaceField({ edit, label, field, axis, place, onPlace }: PlaceFieldProps) {
  const { names } = edit;
  const options = axis === undefined ? names.stations : names.stations.filter((option) => option.axis === axis);
  const stationField = `${field}/station`;
  return (
    <div className="place-field">
      <NameField
        label={label}
        kept={nameOf(names.stations, place?.station)}
        options={options}
        placeholder={axis === undefined ? 'Station' : `Station along ${axis}`}
        error={edit.error(stationField)}
        readOnly={edit.readOnly}
        onSettle={(text) => {
          if (text.trim() === '') {
            edit.say(stationField, undefined);
            return onPlace(undefined);
          }
          const station = stationNamed(edit, text, axis);
          if (typeof station !== 'string') return edit.say(stationField, station.sentence);
          edit.say(stationField, undefined);
          onPlace({ station, beyond: place?.beyond ?? '' });
        }}
      />
      <SettledField
        label="beyond it"
        value={place?.beyond ?? ''}
        placeholder="0"
        className="input figure"
        aria-label={`${label}: beyond it`}
        error={edit.error(`${field}/beyond`)}
        readOnly={edit.readOnly || place === undefined}
        onSettle={(beyond) => place !== undefined && onPlace({ ...place, beyond: beyond.trim() })}
      />
    </div>
  );
}
