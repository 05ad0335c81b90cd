import './sheet.css';
import { type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
import type { StationId } from '../../../../shared/base/ids.ts';
import { type Projection, projections, type SectionChoice, type Sheet } from '../../../../shared/sheet/sheet.ts';
import type { PartState } from '../../../../shared/solid/placed.ts';
import { usePlace } from '../../../app/place.ts';
import { useView } from '../../../engine/use-engine.ts';
import type { BodyRow } from '../../../engine/views/bodies.ts';
import type { PartSheet } from '../../../engine/views/part.ts';
import { Button, IconButton } from '../../../kit/button.tsx';
import { FitIcon, ZoomInIcon, ZoomOutIcon } from '../../../kit/icons.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { useKeptState } from '../../../kit/use-kept-state.ts';
import { litBy } from '../bodies/lit.ts';
import { type PaperWish, SheetDrawing } from './sheet-drawing.tsx';
import { itemsOf } from './sheet-items.ts';
import { WideButton } from './wide-button.tsx';

interface SheetPaneProps {
  readonly sheet: PartSheet;
  readonly tabs: ReactNode;
}

const states: readonly PartState[] = ['as cast', 'finished'];
const noRows: readonly BodyRow[] = [];

/** The part on paper: three views with its dimensions, cut through a station where that is asked for. */
export function SheetPane({ sheet: part, tabs }: SheetPaneProps) {
  const id = part.part.id;
  const [projection, setProjection] = useKeptState<Projection>('sheet:projection', projections, 'first');
  const [state, setState] = useKeptState<PartState>('solid:state', states, 'finished');
  const [section, setSection] = useState<SectionChoice>();
  const [wish, setWish] = useState<PaperWish>();
  const rows = useView('bodies', { part: id }) ?? noRows;
  const hasMachined = useView('solid', { part: id })?.hasMachined === true;
  // A station that is removed takes its section with it.
  const cut = part.stations.some(({ record }) => record.id === section?.station) ? section : undefined;
  const drawn = useView('sheet', { part: id, state, projection, section: cut });
  const sheet = useLast(drawn?.sheet, id);
  const isFresh = drawn?.isFresh === true;
  const { subject, also: others } = usePlace();
  const lit = useMemo(() => litBy(rows, subject, others), [rows, subject, others]);
  const items = useMemo(() => (sheet === undefined ? [] : itemsOf(sheet, part, rows)), [sheet, part, rows]);
  return (
    <Pane
      title={part.part.name}
      beside={tabs}
      actions={
        <>
          <IconButton
            label="Closer"
            keys="+"
            icon={<ZoomInIcon />}
            onClick={() => setWish({ is: 'zoom', factor: 1.4 })}
          />
          <IconButton
            label="Farther"
            keys="−"
            icon={<ZoomOutIcon />}
            onClick={() => setWish({ is: 'zoom', factor: 1 / 1.4 })}
          />
          <IconButton label="Fit" keys="0" icon={<FitIcon />} onClick={() => setWish({ is: 'fit' })} />
          <WideButton />
        </>
      }
    >
      <div
        id="part-table"
        role="tabpanel"
        aria-label="sheet"
        className="sheet-frame"
        data-sheet={isFresh ? 'fresh' : 'waits'}
        aria-busy={!isFresh}
      >
        <div className="sheet-tools">
          <fieldset className="sheet-choice">
            <legend className="unseen">Angle of projection</legend>
            {projections.map((each) => (
              <Button key={each} look="quiet" pressed={each === projection} onClick={() => setProjection(each)}>
                {each === 'first' ? 'First angle' : 'Third angle'}
              </Button>
            ))}
          </fieldset>
          {hasMachined && (
            <fieldset className="sheet-choice">
              <legend className="unseen">State of the part</legend>
              {states.map((each) => (
                <Button key={each} look="quiet" pressed={each === state} onClick={() => setState(each)}>
                  {each === 'finished' ? 'Finished' : 'As cast'}
                </Button>
              ))}
            </fieldset>
          )}
          <SectionChoiceField part={part} section={cut} onSection={setSection} />
          <span className="spring" />
          {sheet !== undefined && !isFresh && <span className="sheet-redrawn soft">being redrawn …</span>}
          {sheet !== undefined && (
            <Button look="quiet" title="Whole paper  (P)" onClick={() => setWish({ is: 'paper' })}>
              {`${sheet.paper} `}
              <span className="figure">{sheet.scale.words}</span>
            </Button>
          )}
        </div>
        {sheet === undefined ? (
          <p className="sheet-waits soft">The sheet is being drawn …</p>
        ) : (
          <SheetDrawing
            sheet={sheet}
            label={`Sheet of ${part.part.name}: ${items.length} things to pick`}
            items={items}
            also={lit.also}
            wish={wish}
          />
        )}
      </div>
    </Pane>
  );
}

/** While another choice is being drawn, the sheet of the same part stays. */
function useLast(fresh: Sheet | undefined, part: string): Sheet | undefined {
  const last = useRef<Sheet>(undefined);
  useEffect(() => {
    if (fresh !== undefined) last.current = fresh;
  }, [fresh]);
  return fresh ?? (last.current?.part === part ? last.current : undefined);
}

interface SectionChoiceFieldProps {
  readonly part: PartSheet;
  readonly section: SectionChoice | undefined;
  readonly onSection: (section: SectionChoice | undefined) => void;
}

function SectionChoiceField({ part, section, onSection }: SectionChoiceFieldProps) {
  const placed = part.stations.filter(({ at }) => at !== undefined);
  return (
    <div className="sheet-section">
      <label>
        <span className="lettering soft">Section</span>{' '}
        <select
          className="input"
          value={section?.station ?? ''}
          onChange={(event) =>
            onSection(
              event.target.value === ''
                ? undefined
                : { station: event.target.value as StationId, look: section?.look ?? '+' },
            )
          }
        >
          <option value="">none</option>
          {placed.map(({ record, at }) => (
            <option key={record.id} value={record.id}>
              {`${record.axis} ${record.name} (${at})`}
            </option>
          ))}
        </select>
      </label>
      {section !== undefined && (
        <Button look="quiet" onClick={() => onSection({ ...section, look: section.look === '+' ? '-' : '+' })}>
          Look the Other Way
        </Button>
      )}
    </div>
  );
}
