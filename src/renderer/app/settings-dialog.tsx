import { useEffect, useState } from 'react';
import type { Settings } from '../../shared/build/settings.ts';
import type { Preferences } from '../../shared/ipc/contract.ts';
import { useEngine, useIsEditable, useView } from '../engine/use-engine.ts';
import { Banner } from '../kit/banner.tsx';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { ChoiceField, SelectField, SettledField } from '../kit/field.tsx';
import { notifyOutcome } from './notices.ts';
import { shell } from './shell.ts';

const classes = [
  { value: 'f', label: 'f  fine' },
  { value: 'm', label: 'm  medium' },
  { value: 'c', label: 'c  coarse' },
  { value: 'v', label: 'v  very coarse' },
] as const;

const unitWords = { mm: 'Millimetres', in: 'Inches' } as const;

const grades = Array.from({ length: 16 }, (_, i) => ({ value: String(i + 1), label: `DCTG ${i + 1}` }));

/** What holds for the whole build, and how this window looks. Every change is an edit of its own and can be undone. */
export function SettingsDialog({ onClose }: { readonly onClose: () => void }) {
  const engine = useEngine();
  const editable = useIsEditable();
  const summary = useView('summary', null);
  const settings = summary?.settings;
  const dimensions = summary?.dimensions ?? 0;
  const [theme, setTheme] = useState<Preferences['theme']>();
  const [error, setError] = useState<string>();
  const [wanted, setWanted] = useState<Settings['lengthUnit']>();
  useEffect(() => {
    void shell.invoke('preferences:get', undefined).then((preferences) => setTheme(preferences.theme));
  }, []);
  if (settings === undefined) return null;
  const set = async (change: Partial<Omit<Settings, 'kind' | 'id'>>, keepSizes = false) => {
    setWanted(undefined);
    const outcome = await engine.run('settings-set', { set: change, keepSizes });
    setError(outcome.ok ? undefined : outcome.sentence);
    notifyOutcome(outcome);
  };
  return (
    <Dialog title="Build settings" onClose={onClose} actions={<Button onClick={onClose}>Done</Button>}>
      <SettledField
        label="Name of the machine"
        value={settings.name}
        error={error}
        readOnly={!editable}
        onSettle={(name) => void set({ name })}
      />
      <ChoiceField
        label="Unit of lengths written without one"
        value={wanted ?? settings.lengthUnit}
        disabled={!editable}
        options={[
          { value: 'mm', label: 'Millimetre' },
          { value: 'in', label: 'Inch' },
        ]}
        onChange={(unit) => {
          if (unit === settings.lengthUnit) setWanted(undefined);
          else if (dimensions === 0) void set({ lengthUnit: unit });
          else setWanted(unit);
        }}
      />
      {wanted !== undefined && (
        <Banner
          severity="caution"
          actions={
            <>
              <Button look="main" onClick={() => void set({ lengthUnit: wanted }, true)}>
                Keep Every Size
              </Button>
              <Button onClick={() => void set({ lengthUnit: wanted })}>Read Numbers as {unitWords[wanted]}</Button>
            </>
          }
        >
          Numbers without a unit are read in {settings.lengthUnit} so far. Either every size stays, so that{' '}
          <span className="figure">25</span> is written out as <span className="figure">25 {settings.lengthUnit}</span>,
          or the numbers stay, and <span className="figure">25</span> comes to mean{' '}
          <span className="figure">25 {wanted}</span>.
        </Banner>
      )}
      <div className="form-row">
        <SelectField
          label="Machined, without limits of its own"
          hint="Class of ISO 2768-1"
          value={settings.machinedTolerance}
          disabled={!editable}
          options={classes}
          onChange={(machinedTolerance) => void set({ machinedTolerance })}
        />
        <SelectField
          label="As cast, without limits of its own"
          hint="Casting tolerance grade of ISO 8062-3. Hand-moulded light metal in dry sand reaches about 11."
          value={String(settings.castingGrade)}
          disabled={!editable}
          options={grades}
          onChange={(grade) => void set({ castingGrade: Number(grade) })}
        />
      </div>
      <SettledField
        label="Note"
        lines={3}
        value={settings.note}
        readOnly={!editable}
        onSettle={(note) => void set({ note })}
      />
      {theme !== undefined && (
        <ChoiceField
          label="Light of this window"
          value={theme}
          options={[
            { value: 'system', label: 'As the system' },
            { value: 'light', label: 'Drafting paper' },
            { value: 'dark', label: 'Evening shift' },
          ]}
          onChange={(next) => {
            setTheme(next);
            void shell.invoke('preferences:set', { theme: next });
          }}
        />
      )}
    </Dialog>
  );
}
