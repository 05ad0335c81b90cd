import { useState } from 'react';
import { notifyOutcome } from '../../../app/notices.ts';
import { goTo } from '../../../app/place.ts';
import type { OperationRow, RouteModel } from '../../../engine/machining/route-models.ts';
import { useEngine, useIsEditable } from '../../../engine/use-engine.ts';
import { FindingItem } from '../../../findings/finding-item.tsx';
import { Button } from '../../../kit/button.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { Tabs } from '../../../kit/tabs.tsx';
import { setMachining } from '../machining-state.ts';
import { goToUnknown } from '../setups/verdict-list.tsx';
import { OperationForm } from './operation-form.tsx';

interface OperationPaneProps {
  readonly row: OperationRow;
  readonly model: RouteModel;
}

type Side = 'form' | 'figures';

/** One operation: what it is, and what follows from it. */
export function OperationPane({ row, model }: OperationPaneProps) {
  const engine = useEngine();
  const editable = useIsEditable();
  const [side, setSide] = useState<Side>('form');
  const remove = async () => {
    const outcome = notifyOutcome(await engine.run('operation-remove', { operations: [row.record.id] }));
    if (outcome.ok) setMachining({ operation: undefined });
  };
  return (
    <Pane
      title="Operation"
      beside={
        <Tabs
          label="Side"
          panel="operation-side"
          value={side}
          onChange={setSide}
          tabs={[
            { value: 'form', label: 'Form' },
            { value: 'figures', label: 'Figures' },
          ]}
        />
      }
      actions={
        editable && (
          <Button look="quiet" onClick={() => void remove()}>
            Remove
          </Button>
        )
      }
    >
      {row.findings.length > 0 && (
        <ul className="operation-findings">
          {row.findings.map((finding) => (
            <FindingItem key={finding.key} finding={finding} showPart={false} />
          ))}
        </ul>
      )}
      <div id="operation-side" role="tabpanel" aria-label={side}>
        {side === 'form' ? <OperationForm row={row} model={model} /> : <Figures row={row} />}
      </div>
    </Pane>
  );
}

function Figures({ row }: { readonly row: OperationRow }) {
  return (
    <div className="operation-figures">
      {row.unknown.length > 0 && (
        <section className="verdict-missing" aria-label="Not known">
          <ul className="verdict-unknown">
            {row.unknown.map(({ sentence, go }) => (
              <li key={sentence}>
                {go === undefined || go.to === 'field' ? (
                  sentence
                ) : (
                  <button type="button" className="verdict-link" onClick={() => goToUnknown(go)}>
                    {sentence}
                  </button>
                )}
              </li>
            ))}
          </ul>
        </section>
      )}
      <dl className="operation-list">
        {row.figures.map(({ name, value, from }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              <span className={name === 'Mind' || name === 'Cut as' ? '' : 'figure'}>{value}</span>
              {from !== '' && <span className="setup-under">{from}</span>}
            </dd>
          </div>
        ))}
      </dl>
      {row.setup !== undefined && (
        <div className="setup-acts operation-acts">
          <Button
            onClick={() => {
              setMachining({ desk: 'setups', setup: row.setup?.id });
              goTo({ subject: row.setup?.id });
            }}
          >
            See It in the Swing View
          </Button>
        </div>
      )}
    </div>
  );
}
