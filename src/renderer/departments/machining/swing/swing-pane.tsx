import { useState } from 'react';
import type { PictureSide } from '../../../../shared/machining/picture/picture.ts';
import type { SetupModel, VerdictRow } from '../../../engine/machining/models.ts';
import { Button } from '../../../kit/button.tsx';
import { Empty } from '../../../kit/empty.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { useKeptState } from '../../../kit/use-kept-state.ts';
import { SolidLook } from './solid-look.tsx';
import { SwingView } from './swing-view.tsx';
import { useSeenWork } from './use-solid.ts';

interface SwingPaneProps {
  readonly model: SetupModel;
  readonly verdict: VerdictRow | undefined;
}

const looks = ['end', 'above', 'solid'] as const;
type Look = (typeof looks)[number];

const lookWords: Readonly<Record<Look, string>> = {
  end: 'Front and end',
  above: 'Front and above',
  solid: 'Solid',
};

const sidesOf: Readonly<Record<Look, readonly PictureSide[]>> = {
  // Where there is room for it, the third view stands under the first.
  end: ['front', 'end', 'above'],
  above: ['front', 'above'],
  solid: [],
};

/** What is seen from above: the room that the tool and its block have. */
const fromAbove: ReadonlySet<string> = new Set(['tool-reach', 'tool-block-head', 'tool-block-tail']);

/** The set-up in its machine. */
export function SwingPane({ model, verdict }: SwingPaneProps) {
  const [kept, setLook] = useKeptState<Look>('machining:look', looks, 'end');
  const { scene, record } = model;
  const offered: readonly Look[] = scene?.is === 'lathe' ? looks : ['end'];
  // A verdict that is seen from above brings that view with it, until the reader asks for another.
  const [asked, setAsked] = useState<{ readonly for: string | undefined; readonly look: Look }>();
  const fits = verdict !== undefined && fromAbove.has(verdict.shown.kind) && kept === 'end' ? 'above' : kept;
  const wanted = asked !== undefined && asked.for === verdict?.key ? asked.look : fits;
  const look = offered.includes(wanted) ? wanted : 'end';
  const choose = (each: Look) => {
    setLook(each);
    setAsked({ for: verdict?.key, look: each });
  };
  const work = useSeenWork(record.id, sidesOf[look], model.picture);
  return (
    <Pane
      title={`${model.part}: ${record.name}`}
      actions={
        scene !== undefined &&
        offered.length > 1 && (
          <fieldset className="swing-looks">
            <legend className="unseen">Look at it</legend>
            {offered.map((each) => (
              <Button key={each} look="quiet" pressed={each === look} onClick={() => choose(each)}>
                {lookWords[each]}
              </Button>
            ))}
          </fieldset>
        )
      }
    >
      {scene === undefined ? (
        <Empty title="Not in the machine yet">
          <p>The list of verdicts says what is still missing. Nothing is guessed in its place.</p>
        </Empty>
      ) : look === 'solid' && scene.is === 'lathe' ? (
        <SolidLook model={model} scene={scene} />
      ) : (
        <SwingView
          key={record.id}
          model={model}
          scene={scene}
          verdict={verdict}
          second={look === 'above' ? 'above' : 'end'}
          work={work}
        />
      )}
    </Pane>
  );
}
