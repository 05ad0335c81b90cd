import { useState } from 'react';
import { notifyOutcome } from '../../../app/notices.ts';
import { goTo } from '../../../app/place.ts';
import type { OperationRow, RouteModel } from '../../../engine/machining/route-models.ts';
import { useEngine, useIsEditable } from '../../../engine/use-engine.ts';
import type { FindingLine } from '../../../engine/views/findings.ts';
import { FindingItem } from '../../../findings/finding-item.tsx';
import { Button } from '../../../kit/button.tsx';
import { Empty } from '../../../kit/empty.tsx';
import { SeverityMark } from '../../../kit/marks.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { Tabs } from '../../../kit/tabs.tsx';
import { setMachining } from '../machining-state.ts';
import { goToUnknown } from '../setups/verdict-list.tsx';
import { OperationForm } from './operation-form.tsx';
import { worstOf } from './worst-of.ts';

interface OperationPaneProps {
  readonly row: OperationRow;
  readonly model: RouteModel;
}

type Side = 'form' | 'figures' | 'findings';

/** One operation: what it is, and what follows from it. */
export function OperationPane({ row, model }: OperationPaneProps) {
  const engine = useEngine();
  const editable = useIsEditable();
  const { findings } = row;
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
            { value: 'findings', label: <Said findings={findings} /> },
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
      <div id="operation-side" role="tabpanel" aria-label={side}>
        {side === 'form' && <OperationForm row={row} model={model} />}
        {side === 'figures' && <Figures row={row} />}
        {side === 'findings' && <Findings findings={findings} />}
      </div>
    </Pane>
  );
}

/** The tab of what the rules say, with the gravest of it. */
function Said({ findings }: { readonly findings: readonly FindingLine[] }) {
  const worst = worstOf(findings);
  return <>Findings {worst !== undefined && <SeverityMark severity={worst} count={findings.length} />}</>;
}

function Findings({ findings }: { readonly findings: readonly FindingLine[] }) {
  if (findings.length === 0) {
    return (
      <Empty title="Nothing to say">
        <p>Every rule has looked at this operation and found nothing amiss.</p>
      </Empty>
    );
  }
  return (
    <ul>
      {findings.map((finding) => (
        <FindingItem key={finding.key} finding={finding} showPart={false} full />
      ))}
    </ul>
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
