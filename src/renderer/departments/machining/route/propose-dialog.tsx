import { useEffect, useState } from 'react';
import type { PartId } from '../../../../shared/base/ids.ts';
import type { OrderAnswer } from '../../../engine/machining/route-models.ts';
import { useEngine } from '../../../engine/use-engine.ts';
import { Button } from '../../../kit/button.tsx';
import { Dialog } from '../../../kit/dialog.tsx';

const times = (count: number): string => (count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`);

/** An order that has all that is needed, with its reasons, before it is taken. */
export function ProposeDialog({ part, onClose }: { readonly part: PartId; readonly onClose: () => void }) {
  const engine = useEngine();
  const [answer, setAnswer] = useState<OrderAnswer>();
  const [refused, setRefused] = useState<string>();
  useEffect(() => {
    let late = false;
    void engine.ask('propose-order', { part }).then((given) => {
      if (!late) setAnswer(given);
    });
    return () => {
      late = true;
    };
  }, [engine, part]);
  const take = async () => {
    if (answer?.is !== 'order') return;
    const outcome = await engine.run('operations-order', { part, order: answer.rows.map(({ id }) => id) });
    if (outcome.ok) onClose();
    else setRefused(outcome.sentence);
  };
  const canTake = answer?.is === 'order' && !answer.isSame;
  return (
    <Dialog
      title="Proposed order"
      wide
      onClose={onClose}
      onSubmit={() => void take()}
      actions={
        <>
          <Button onClick={onClose}>{canTake ? 'Cancel' : 'Close'}</Button>
          {canTake && (
            <Button look="main" type="submit">
              Take This Order
            </Button>
          )}
        </>
      }
    >
      {answer === undefined && <p className="soft">Looking for it…</p>}
      {answer?.is === 'ring' && (
        <>
          <p>
            There is no order that has all of this: each has to come before the next, and the last before the first.
          </p>
          <ul className="propose-reasons">
            {answer.reasons.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        </>
      )}
      {answer?.is === 'order' && (
        <>
          <p>
            {answer.isSame
              ? 'The route stands in this order already.'
              : `The work is taken up ${times(answer.holdings)}; as it stands now, ${times(answer.holdingsNow)}.`}{' '}
            {answer.fewest ? 'No order needs fewer.' : 'A good order; with so many operations not every one was tried.'}
          </p>
          <table className="propose">
            <thead>
              <tr className="lettering soft">
                <th scope="col">Step</th>
                <th scope="col">Now</th>
                <th scope="col">Operation</th>
                <th scope="col">Done in</th>
                <th scope="col">Why here</th>
              </tr>
            </thead>
            <tbody>
              {answer.rows.map((row, i) => (
                <tr key={row.id} data-moved={row.now !== i + 1}>
                  <td className="figure">{i + 1}</td>
                  <td className={row.now === i + 1 ? 'figure soft' : 'figure propose-moved'}>{row.now}</td>
                  <th scope="row">{row.name}</th>
                  <td>{row.setup}</td>
                  <td>
                    {row.reasons.length === 0 ? (
                      <span className="soft">nothing has to come before it</span>
                    ) : (
                      row.reasons.join('; ')
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          {answer.dropped.length > 0 && (
            <>
              <p>Good practice that no order can have with all the rest:</p>
              <ul className="propose-reasons">
                {answer.dropped.map((reason) => (
                  <li key={reason}>{reason}</li>
                ))}
              </ul>
            </>
          )}
        </>
      )}
      {refused !== undefined && <p className="setup-refused">{refused}</p>}
    </Dialog>
  );
}
