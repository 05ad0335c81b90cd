import { useEffect, useState } from 'react';
import type { Machine } from '../../../../shared/build/machine.ts';
import { readFigures } from '../../../../shared/plan/machine-figures-read.ts';
import type { LengthUnit } from '../../../../shared/quantity/kind.ts';
import { type MachineFigure, machineFigures } from '../../../../shared/tables/machine-figures.ts';
import { notifyOutcome } from '../../../app/notices.ts';
import { goTo } from '../../../app/place.ts';
import type { MachineRow } from '../../../engine/machining/models.ts';
import { useEngine, useIsEditable } from '../../../engine/use-engine.ts';
import { Banner } from '../../../kit/banner.tsx';
import { Button } from '../../../kit/button.tsx';
import { SettledField } from '../../../kit/field.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { setMachining, useMachining } from '../machining-state.ts';
import { BedOutline } from './bed-outline.tsx';
import { FigureField } from './figure-field.tsx';
import { groupsOf } from './figure-groups.ts';
import { keepInShop, type Shop } from './shop.ts';
import { differences, markOf } from './shop-marks.ts';

interface MachineFormProps {
  readonly row: MachineRow;
  readonly unit: LengthUnit;
  readonly shop: Shop;
  readonly onRemove: () => void;
}

/** All that is known of one machine, and what is not. */
export function MachineForm({ row, unit, shop, onRemove }: MachineFormProps) {
  const engine = useEngine();
  const readOnly = !useIsEditable();
  const { figure: wanted } = useMachining();
  const { record } = row;
  const [errors, setErrors] = useState<Readonly<Record<string, string | undefined>>>({});
  // A figure that was asked for takes the focus once.
  useEffect(() => {
    if (wanted !== undefined) setMachining({ figure: undefined });
  }, [wanted]);
  const set = async (field: string, fields: Partial<Omit<Machine, 'kind' | 'id' | 'order'>>) => {
    const outcome = await engine.run('machine-set', { machine: record.id, set: fields });
    setErrors((now) => ({ ...now, [field]: outcome.ok ? undefined : outcome.sentence }));
  };
  const figures = machineFigures[record.type];
  const { doubts } = readFigures(record, unit);
  const known = figures.filter(({ key }) => record.figures[key] !== undefined).length;
  const field = (figure: MachineFigure) => (
    <FigureField
      key={figure.key}
      figure={figure}
      machine={record}
      doubt={doubts.find(({ key }) => key === figure.key)?.problem}
      unit={unit}
      refused={errors[figure.key]}
      readOnly={readOnly}
      wanted={wanted === figure.key}
      onSettle={(text) => void set(figure.key, { figures: { [figure.key]: text } })}
    />
  );
  return (
    <Pane
      title={record.name}
      beside={
        <span className="soft">
          {record.type}, <span className="figure">{known}</span> of <span className="figure">{figures.length}</span>{' '}
          figures known
        </span>
      }
      actions={
        !readOnly && (
          <Button look="quiet" onClick={onRemove}>
            Remove
          </Button>
        )
      }
    >
      <Marks
        record={record}
        shop={shop}
        unit={unit}
        readOnly={readOnly}
        onSet={(fields) => void set('generic', fields)}
      />
      <div className="machine-form">
        <div className="machine-head">
          <SettledField
            label="Name"
            value={record.name}
            error={errors.name}
            readOnly={readOnly}
            onSettle={(name) => void set('name', { name })}
          />
          <SettledField
            label="Note"
            value={record.note}
            error={errors.note}
            readOnly={readOnly}
            onSettle={(note) => void set('note', { note })}
          />
        </div>
        {groupsOf(record.type).map(({ title, keys }) => (
          <section key={title} className="figure-group" aria-label={title}>
            <h3 className="lettering">{title}</h3>
            <div className="figure-fields">{figures.filter(({ key }) => keys.includes(key)).map(field)}</div>
          </section>
        ))}
        {record.type === 'lathe' && (
          <BedOutline
            machine={record}
            unit={unit}
            readOnly={readOnly}
            refused={errors.bed}
            onSet={(bed) => void set('bed', { bed })}
          />
        )}
        <Used row={row} />
      </div>
    </Pane>
  );
}

interface MarksProps {
  readonly record: Machine;
  readonly shop: Shop;
  readonly unit: LengthUnit;
  readonly readOnly: boolean;
  readonly onSet: (fields: Partial<Machine>) => void;
}

/** What is to be minded of the machine as a whole, with the ways to settle it. */
function Marks({ record, shop, unit, readOnly, onSet }: MarksProps) {
  const engine = useEngine();
  const mark = markOf(record, shop);
  const own = shop.machines?.find(({ id }) => id === record.id);
  const keepButton = <Button onClick={() => void keepInShop(record, unit)}>Keep in My Shop</Button>;
  return (
    <>
      {record.generic && (
        <Banner
          severity="note"
          actions={!readOnly && <Button onClick={() => onSet({ generic: false })}>These Are My Machine’s</Button>}
        >
          Generic figures of its size class, not your machine’s. Put a rule to it before you trust a narrow margin.
        </Banner>
      )}
      {mark === 'differs' && own !== undefined && (
        <Banner
          severity="caution"
          actions={
            <>
              {!readOnly && (
                <Button onClick={() => void engine.run('machines-take', { machines: [own] }).then(notifyOutcome)}>
                  Take the Shop’s
                </Button>
              )}
              {keepButton}
            </>
          }
        >
          It differs from the one in your shop:{' '}
          {differences(record, own)
            .slice(0, 4)
            .map(({ label, here, there }) => `${label} ${here || 'not known'} here, ${there || 'not known'} there`)
            .join('; ')}
          {differences(record, own).length > 4 && `; and ${differences(record, own).length - 4} more`}.
        </Banner>
      )}
      {mark === 'not in shop' && (
        <Banner severity="note" actions={keepButton}>
          It is in this build alone. Keep it in your shop, and every build can take it from there.
        </Banner>
      )}
    </>
  );
}

function Used({ row }: { readonly row: MachineRow }) {
  if (row.used.length === 0) return null;
  return (
    <section className="figure-group" aria-label="Set-ups on it">
      <h3 className="lettering">Set-ups on it</h3>
      <ul className="machine-setups">
        {row.used.map(({ setup, part, name }) => (
          <li key={setup}>
            <button
              type="button"
              className="verdict-link"
              onClick={() => {
                setMachining({ desk: 'setups', setup });
                goTo({ part, subject: setup });
              }}
            >
              {name}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
