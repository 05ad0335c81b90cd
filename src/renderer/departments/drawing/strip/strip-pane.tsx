import { useEffect, useState } from 'react';
import type { RecordId } from '../../../../shared/build/records.ts';
import { type Axis, axes } from '../../../../shared/build/station.ts';
import { addStation } from '../../../app/adding.ts';
import { notifyOutcome } from '../../../app/notices.ts';
import { goTo, usePlace } from '../../../app/place.ts';
import { useEngine, useIsEditable } from '../../../engine/use-engine.ts';
import type { PartSheet } from '../../../engine/views/part.ts';
import type { StripModel } from '../../../engine/views/strip.ts';
import { Button, IconButton } from '../../../kit/button.tsx';
import { Empty } from '../../../kit/empty.tsx';
import { FitIcon, ZoomInIcon, ZoomOutIcon } from '../../../kit/icons.tsx';
import { SeverityMark } from '../../../kit/marks.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { Tabs } from '../../../kit/tabs.tsx';
import { ChainStrip } from './chain-strip.tsx';

interface StripPaneProps {
  readonly sheet: PartSheet;
  readonly onOpenRow: (id: RecordId) => void;
  readonly onWriteValue: (id: RecordId) => void;
}

const holds = (strip: StripModel, id: string): boolean =>
  strip.stations.some((station) => station.id === id) || strip.arcs.some((arc) => arc.id === id);

const amiss = (strip: StripModel): boolean =>
  strip.conflicts.length > 0 || strip.groups > 1 || strip.datum === undefined;

/** The chain strips of a part, one axis at a time. */
export function StripPane({ sheet, onOpenRow, onWriteValue }: StripPaneProps) {
  const engine = useEngine();
  const editable = useIsEditable();
  const { subject } = usePlace();
  const [axis, setAxis] = useState<Axis>('X');
  const [fits, setFits] = useState(0);
  const [zooms, setZooms] = useState({ count: 0, factor: 1 });
  const strip = sheet.strips.find((each) => each.axis === axis) ?? sheet.strips[0];
  // What is selected elsewhere is shown: its axis comes to the front.
  useEffect(() => {
    const its = subject === undefined ? undefined : sheet.strips.find((each) => holds(each, subject));
    if (its !== undefined) setAxis(its.axis);
  }, [subject, sheet.strips]);

  const onTie = async (tie: StripModel['ties'][number]) => {
    if (tie.dimension !== undefined) {
      goTo({ subject: tie.dimension });
      return onWriteValue(tie.dimension);
    }
    if (!editable) return;
    const measure = { type: 'between', from: tie.from, to: tie.to } as const;
    const outcome = notifyOutcome(await engine.run('dimension-add', { part: sheet.part.id, measure }));
    const added = outcome.ok ? outcome.added[0] : undefined;
    if (added === undefined) return;
    goTo({ subject: added });
    onWriteValue(added);
  };
  const zoom = (factor: number) => setZooms((now) => ({ count: now.count + 1, factor }));
  return (
    <Pane
      title="Chain strip"
      beside={
        sheet.strips.length > 0 && (
          <Tabs
            label="Axis"
            panel="chain-strip"
            value={strip?.axis ?? axis}
            onChange={setAxis}
            tabs={sheet.strips.map((each) => ({
              value: each.axis,
              label: (
                <>
                  {each.axis}
                  {amiss(each) && <SeverityMark severity="stop" />}
                </>
              ),
            }))}
          />
        )
      }
      actions={
        strip !== undefined && (
          <>
            <IconButton label="Closer" keys="+" icon={<ZoomInIcon />} onClick={() => zoom(1.4)} />
            <IconButton label="Farther" keys="−" icon={<ZoomOutIcon />} onClick={() => zoom(1 / 1.4)} />
            <IconButton label="Fit" keys="0" icon={<FitIcon />} onClick={() => setFits(fits + 1)} />
          </>
        )
      }
    >
      {strip === undefined ? (
        <Empty
          title="No stations yet"
          actions={
            editable &&
            axes.map((each) => (
              <Button key={each} onClick={() => void addStation(engine, each)}>
                Station along {each}
              </Button>
            ))
          }
        >
          <p>
            A station is a named place along X, Y or Z: a face, a shoulder, a centreline. The first along an axis is its
            datum; dimensions run from station to station.
          </p>
        </Empty>
      ) : (
        <div id="chain-strip" role="tabpanel" aria-label={`Axis ${strip.axis}`} className="strip-panel">
          <ChainStrip
            model={strip}
            inch={sheet.unit === 'in'}
            fits={fits}
            zooms={zooms}
            onTie={(tie) => void onTie(tie)}
            onOpenRow={onOpenRow}
          />
        </div>
      )}
    </Pane>
  );
}
