import type { SetupModel, VerdictRow } from '../../../engine/machining/models.ts';
import { Button } from '../../../kit/button.tsx';
import { Empty } from '../../../kit/empty.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { useKeptState } from '../../../kit/use-kept-state.ts';
import { SwingView } from './swing-view.tsx';

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

/** The set-up in its machine. */
export function SwingPane({ model, verdict }: SwingPaneProps) {
  const [look, setLook] = useKeptState<Look>('machining:look', looks, 'end');
  const { scene } = model;
  return (
    <Pane
      title={`${model.part}: ${model.record.name}`}
      actions={
        scene !== undefined && (
          <fieldset className="swing-looks">
            <legend className="unseen">Look at it</legend>
            {looks.map((each) => (
              <Button key={each} look="quiet" pressed={each === look} onClick={() => setLook(each)}>
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
      ) : (
        <SwingView
          key={model.record.id}
          model={model}
          scene={scene}
          verdict={verdict}
          second={look === 'above' ? 'above' : 'end'}
          work={{}}
        />
      )}
    </Pane>
  );
}
