import { useState } from 'react';
import type { SolidImport } from '../../shared/build/commands/solid-import.ts';
import { type MeshUnit, meshUnits } from '../../shared/build/solid.ts';
import { axes } from '../../shared/build/station.ts';
import type { PickedSolid } from '../../shared/ipc/contract.ts';
import { formatNumber } from '../../shared/quantity/format.ts';
import { mmPer, unitDoubt } from '../../shared/solid/formats/unit-doubt.ts';
import type { SolidHome } from '../engine/asks/solid-home.ts';
import { useEngine } from '../engine/use-engine.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { ChoiceField, SelectField, TextField } from '../kit/field.tsx';
import { notify } from './notices.ts';
import { goTo, usePlace } from './place.ts';
import { shell } from './shell.ts';
import { type SignedAxis, signedAxes, turnFrom } from './solid-turn.ts';

interface Picked {
  readonly solid: PickedSolid;
  readonly home: SolidHome;
}

/** What the reader chooses about a solid; the unit is asked for and never guessed. */
interface Choices {
  readonly name: string;
  readonly unit: MeshUnit | undefined;
  readonly isSure: boolean;
  readonly adds: 'adds' | 'takes';
  readonly finish: NonNullable<SolidImport['finish']>;
  /** By axis: the id of a station, or '' for the datum. */
  readonly origin: readonly [string, string, string];
  readonly x: SignedAxis;
  readonly z: SignedAxis;
}

const unitNames: Readonly<Record<MeshUnit, string>> = { mm: 'mm', cm: 'cm', m: 'm', in: 'inch', ft: 'foot' };
const length = (mm: number): string => `${formatNumber(mm, 3)} mm`;

const firstChoices = ({ fileName, unit }: PickedSolid): Choices => ({
  name: fileName.replace(/\.[^.]*$/, ''),
  unit,
  isSure: false,
  adds: 'adds',
  finish: 'as cast',
  origin: ['', '', ''],
  x: '+X',
  z: '+Z',
});

/** Takes in a solid of another program as a body of the part on show: first what was read, then, if agreed, one step. */
export function ImportSolidDialog({ onClose }: { readonly onClose: () => void }) {
  const engine = useEngine();
  const { part } = usePlace();
  const [picked, setPicked] = useState<Picked>();
  const [choices, setChoices] = useState<Choices>();
  const [busy, setBusy] = useState<string>();
  const [error, setError] = useState<string>();

  const choose = async () => {
    if (part === undefined) return;
    setBusy('Reading the file …');
    const answer = await shell.invoke('files:pick-solid', undefined);
    setBusy(undefined);
    if (!answer.ok) {
      const { fileName, place, sentence, remedy } = answer.error;
      setPicked(undefined);
      return setError(`${fileName}${place === '' ? '' : `, ${place}`}: ${sentence} ${remedy}`);
    }
    const solid = answer.value;
    if (solid === undefined) return;
    const home = await engine.ask('solid-home', { part });
    if (home === undefined) return setError('The part is no longer in the build. Choose a part, and import again.');
    setError(undefined);
    setPicked({ solid, home });
    setChoices(firstChoices(solid));
  };
  const turn = choices && turnFrom(choices.x, choices.z);
  const size = picked && [0, 1, 2].map((axis) => picked.solid.max[axis]! - picked.solid.min[axis]!);
  const unit = choices?.unit;
  const doubt = picked && size && unit && unitDoubt(Math.max(...size), unit, picked.home.greatestMm);
  const isReady = unit !== undefined && turn !== undefined && (doubt === undefined || choices?.isSure === true);

  const take = async () => {
    if (!picked || !choices || unit === undefined || turn === undefined) return;
    const { solid, home } = picked;
    setBusy('Taking it in …');
    const coded = await engine.ask('code-solid', { vertices: solid.vertices, triangles: solid.triangles, unit });
    if (coded === undefined) return setBusy(undefined);
    const place = (axis: 0 | 1 | 2) =>
      // Nought from the datum is the datum itself; one is made where the axis has none.
      home.stations[axes[axis]].find(({ id }) => id === choices.origin[axis])?.id ?? ({ value: '0' } as const);
    const outcome = await engine.run('solid-import', {
      part: home.part,
      solid: { name: choices.name, fileName: solid.fileName, unit, note: '', ...coded },
      origin: [place(0), place(1), place(2)],
      turn,
      adds: choices.adds === 'adds',
      finish: choices.finish,
    });
    setBusy(undefined);
    if (!outcome.ok) return setError(outcome.sentence);
    goTo({ department: 'drawing', part: home.part });
    notify({ sentence: `Done: ${outcome.label}.`, isRefusal: false });
    onClose();
  };
  const change = (how: Partial<Choices>) => choices && setChoices({ ...choices, ...how });

  return (
    <Dialog
      title="Import a solid"
      wide={picked !== undefined}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button
            look={picked === undefined ? 'main' : 'plain'}
            disabled={busy !== undefined}
            onClick={() => void choose()}
          >
            {picked === undefined ? 'Choose File…' : 'Choose Another File…'}
          </Button>
          {picked !== undefined && (
            <Button look="main" disabled={!isReady || busy !== undefined} onClick={() => void take()}>
              Take It In
            </Button>
          )}
        </>
      }
    >
      {error !== undefined && <p className="mark stop import-error">{error}</p>}
      {busy !== undefined && <p role="status">{busy}</p>}
      {picked === undefined && (
        <p>
          A solid from STEP, STL, OBJ or 3MF becomes a body of this part. It must be closed; small gaps are mended.
          Nothing is taken before you have seen its size.
        </p>
      )}
      {picked !== undefined && choices !== undefined && size !== undefined && (
        <>
          <p>
            {picked.solid.fileName}: {picked.solid.triangles.length / 3} triangles
            {unit === undefined
              ? `, ${size.map((value) => formatNumber(value, 3)).join(' × ')} in its own numbers.`
              : `, ${size.map((value) => formatNumber(value * mmPer[unit], 2)).join(' × ')} mm, ${formatNumber((picked.solid.volume * mmPer[unit] ** 3) / 1000, 2)} cm³.`}
          </p>
          {picked.solid.remarks.map((remark) => (
            <p key={remark} className="soft">
              {remark}
            </p>
          ))}
          {picked.solid.unit === undefined && (
            <ChoiceField
              label="Unit of the file, which it does not say"
              value={unit ?? ''}
              options={meshUnits.map((value) => ({ value, label: unitNames[value] }))}
              onChange={(value) => change({ unit: meshUnits.find((known) => known === value), isSure: false })}
            />
          )}
          {doubt !== undefined && (
            <div className="mark caution import-error">
              <p>
                It would measure {length(doubt.sizeMm)} at its greatest
                {doubt.partMm === undefined ? '.' : `, and ${picked.home.name} measures ${length(doubt.partMm)}.`}
                {doubt.better !== undefined &&
                  picked.solid.unit === undefined &&
                  ` In ${unitNames[doubt.better]} it would be ${length(Math.max(...size) * mmPer[doubt.better])}.`}
              </p>
              <label>
                <input
                  type="checkbox"
                  checked={choices.isSure}
                  onChange={(event) => change({ isSure: event.target.checked })}
                />{' '}
                The size is right
              </label>
            </div>
          )}
          <div className="form-row">
            <TextField
              label={`Body of ${picked.home.name}`}
              value={choices.name}
              maxLength={120}
              onChange={(name) => change({ name })}
            />
            <SelectField
              label="Does"
              value={choices.adds}
              options={[
                { value: 'adds', label: 'add to the part' },
                { value: 'takes', label: 'take from the part' },
              ]}
              onChange={(adds) => change({ adds })}
            />
            <SelectField
              label="Made"
              value={choices.finish}
              options={(['as cast', 'cored', 'machined'] as const).map((value) => ({ value, label: value }))}
              onChange={(finish) => change({ finish })}
            />
          </div>
          <div className="form-row">
            {axes.map((axis, i) => (
              <SelectField
                key={axis}
                label={`Its origin along ${axis}`}
                value={choices.origin[i]!}
                options={[
                  { value: '', label: 'at the datum' },
                  ...picked.home.stations[axis].map(({ id, name }) => ({ value: id as string, label: name })),
                ]}
                onChange={(id) =>
                  change({
                    origin: choices.origin.map((old, k) => (k === i ? id : old)) as unknown as Choices['origin'],
                  })
                }
              />
            ))}
          </div>
          <div className="form-row">
            <SelectField
              label="Its X becomes"
              value={choices.x}
              options={signedAxes.map((value) => ({ value, label: value }))}
              onChange={(x) => change({ x })}
            />
            <SelectField
              label="Its Z becomes"
              value={choices.z}
              options={signedAxes.map((value) => ({ value, label: value }))}
              error={turn === undefined ? 'X and Z cannot lie along one line. Choose another axis.' : undefined}
              onChange={(z) => change({ z })}
            />
          </div>
        </>
      )}
    </Dialog>
  );
}
