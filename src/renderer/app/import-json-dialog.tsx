import { useState } from 'react';
import type { JsonProblem } from '../../shared/build/build-json.ts';
import { useEngine } from '../engine/use-engine.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { pickText } from './picking.ts';

type State =
  | { readonly is: 'asking' }
  | { readonly is: 'refused'; readonly name: string; readonly problems: readonly JsonProblem[] }
  | { readonly is: 'failed'; readonly sentence: string };

/** Puts the content of a JSON build in the place of this one, as one step that can be undone. */
export function ImportJsonDialog({ onClose }: { readonly onClose: () => void }) {
  const engine = useEngine();
  const [state, setState] = useState<State>({ is: 'asking' });
  const choose = async () => {
    const picked = await pickText('json');
    if (picked === undefined) return;
    if (!picked.ok) return setState({ is: 'failed', sentence: picked.sentence });
    const read = await engine.ask('read-json', { text: picked.text });
    if (read === undefined) return;
    if (!read.ok) return setState({ is: 'refused', name: picked.name, problems: read.error });
    const outcome = await engine.run('build-replace', { records: read.value.records });
    if (outcome.ok) onClose();
    else setState({ is: 'failed', sentence: outcome.sentence });
  };
  return (
    <Dialog
      title="Import a JSON build"
      wide={state.is === 'refused'}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button look="main" onClick={() => void choose()}>
            {state.is === 'asking' ? 'Choose File…' : 'Choose Another File…'}
          </Button>
        </>
      }
    >
      {state.is === 'asking' && (
        <p>Everything in this build gives way to what the file holds. It is one step: undo brings all of it back.</p>
      )}
      {state.is === 'failed' && <p className="mark stop">{state.sentence}</p>}
      {state.is === 'refused' && (
        <>
          <p>
            {state.name} was not taken; this build is as it was. {state.problems.length} things stand in the way:
          </p>
          <table className="report">
            <thead>
              <tr>
                <th>Place</th>
                <th>What is wrong</th>
                <th>What to do</th>
              </tr>
            </thead>
            <tbody>
              {state.problems.slice(0, 200).map((problem) => (
                <tr key={`${problem.place} ${problem.sentence}`}>
                  <td className="figure">{problem.place}</td>
                  <td>{problem.sentence}</td>
                  <td>{problem.remedy}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </Dialog>
  );
}
