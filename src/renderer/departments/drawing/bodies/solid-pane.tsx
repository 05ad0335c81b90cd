import './bodies.css';
import { type ReactNode, useMemo, useState } from 'react';
import type { PartId } from '../../../../shared/base/ids.ts';
import type { RecordId } from '../../../../shared/build/records.ts';
import type { PartState } from '../../../../shared/solid/placed.ts';
import { goTo, usePlace } from '../../../app/place.ts';
import type { Picture } from '../../../engine/solid/picture.ts';
import { useView } from '../../../engine/use-engine.ts';
import type { BodyRow } from '../../../engine/views/bodies.ts';
import type { SolidModel } from '../../../engine/views/solid.ts';
import { Button, IconButton } from '../../../kit/button.tsx';
import { Empty } from '../../../kit/empty.tsx';
import { FitIcon, ZoomInIcon, ZoomOutIcon } from '../../../kit/icons.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { useKeptState } from '../../../kit/use-kept-state.ts';
import type { Side } from '../../../view/camera.ts';
import { SolidView, type ViewWish } from '../../../view/solid-view.tsx';
import { WideButton } from '../sheet/wide-button.tsx';
import { FiguresStrip } from './figures-strip.tsx';
import { litBy } from './lit.ts';
import { usePicture } from './use-picture.ts';

interface SolidPaneProps {
  readonly part: PartId;
  readonly name: string;
  /** What a form would make, seen through what is. */
  readonly ghost?: Picture | undefined;
  /** Beside the title: the tabs of the board, where the pane is one of them. */
  readonly beside?: ReactNode;
}

const noRows: readonly BodyRow[] = [];
/** While something is being drawn, nothing else is in the light. */
const noBodies: ReadonlySet<string> = new Set();
const states: readonly PartState[] = ['as cast', 'finished'];
const sideButtons: readonly (readonly [Side, string, string])[] = [
  ['front', 'Front', 'F'],
  ['right', 'Right', 'R'],
  ['top', 'Top', 'T'],
  ['slantwise', 'Slant', 'S'],
];

/** The part as a shaded solid, as cast or finished, with its figures. */
export function SolidPane({ part, name, ghost, beside }: SolidPaneProps) {
  const model = useView('solid', { part });
  const rows = useView('bodies', { part }) ?? noRows;
  const { subject, also } = usePlace();
  const [state, setState] = useKeptState<PartState>('solid:state', states, 'finished');
  const [wish, setWish] = useState<ViewWish>();
  const picture = usePicture(part, state, model?.picture ?? 0);
  const lit = useMemo(() => litBy(rows, subject, also), [rows, subject, also]);
  const nothing = model !== undefined && picture === undefined && ghost === undefined ? whyNothing(model) : undefined;
  const step = (by: 1 | -1) => {
    const here = rows.findIndex(({ record }) => record.id === subject);
    const next = rows[here < 0 ? (by === 1 ? 0 : rows.length - 1) : (here + by + rows.length) % rows.length];
    if (next !== undefined) goTo({ subject: next.record.id });
  };
  const stateSwitch = model?.hasMachined === true && (
    <fieldset className="state-switch">
      <legend className="unseen">State of the part</legend>
      {states.map((each) => (
        <Button key={each} look="quiet" pressed={each === state} onClick={() => setState(each)}>
          {each === 'finished' ? 'Finished' : 'As cast'}
        </Button>
      ))}
    </fieldset>
  );
  const sides = (
    <fieldset className="side-buttons">
      <legend className="unseen">Look from</legend>
      {sideButtons.map(([side, words, key]) => (
        <Button key={side} look="quiet" title={`${words}  (${key})`} onClick={() => setWish({ is: 'side', side })}>
          {words}
        </Button>
      ))}
    </fieldset>
  );
  const isTab = beside !== undefined;
  return (
    <Pane
      title={isTab ? name : 'Solid'}
      beside={isTab ? beside : stateSwitch}
      actions={
        nothing === undefined && (
          <>
            {!isTab && sides}
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
            {isTab && <WideButton />}
          </>
        )
      }
    >
      <div className="solid-frame" {...(isTab ? { id: 'part-table', role: 'tabpanel', 'aria-label': 'solid' } : {})}>
        {isTab && nothing === undefined && (
          <div className="board-tools">
            {stateSwitch}
            <span className="spring" />
            {sides}
          </div>
        )}
        {nothing ?? (
          <div className="solid-stage" data-solid={model?.fresh === true && picture !== undefined ? 'fresh' : 'waits'}>
            <SolidView
              label={`${name}, ${state}. Arrows turn it, Page Down goes from body to body.`}
              picture={picture}
              ghost={ghost}
              lit={ghost === undefined ? lit.lit : noBodies}
              also={ghost === undefined ? lit.also : noBodies}
              of={part}
              onPick={(body) => goTo({ subject: body as RecordId | undefined })}
              onStep={step}
              wish={wish}
              missing={<NoWebGl />}
            />
          </div>
        )}
        {model !== undefined && <FiguresStrip model={model} state={state} />}
      </div>
    </Pane>
  );
}

function NoWebGl() {
  return (
    <Empty title="No picture on this machine">
      <p>
        The shaded solid needs WebGL, which this machine does not offer. Its figures stand below all the same, and the
        sheet shows the part in its views. A newer graphics driver may bring the picture back.
      </p>
    </Empty>
  );
}

/** What is said where there is no solid; undefined while one is on its way. */
function whyNothing({ is }: SolidModel): ReactNode {
  switch (is) {
    case 'no bodies':
      return (
        <Empty title="No bodies yet">
          <p>
            A part is made of bodies: blocks, cylinders, holes and others, each standing on stations and sizes. Add them
            under Bodies; the solid, its volume and its sheet follow by themselves.
          </p>
        </Empty>
      );
    case 'none placed':
      return (
        <Empty title="No body is placed">
          <p>Every body waits for a dimension. The list under Bodies says what each of them lacks.</p>
        </Empty>
      );
    case 'nothing left':
      return (
        <Empty title="Nothing is left">
          <p>The bodies that take away leave nothing of those that add. Look at their order and their sizes.</p>
        </Empty>
      );
    case 'no kernel':
      return (
        <Empty title="Solids cannot be made">
          <p>
            The part of the program that joins and cuts solids could not be loaded. The drawing works without it. Open
            the build again; if that does not help, install the program anew.
          </p>
        </Empty>
      );
    case 'working':
    case 'made':
      return undefined;
  }
}
