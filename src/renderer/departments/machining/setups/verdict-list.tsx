import type { MachineId } from '../../../../shared/base/ids.ts';
import type { RecordId } from '../../../../shared/build/records.ts';
import { notifyOutcome } from '../../../app/notices.ts';
import { goTo } from '../../../app/place.ts';
import type { RemedyRow, SetupModel, UnknownRow, VerdictRow } from '../../../engine/machining/models.ts';
import { useEngine, useIsEditable } from '../../../engine/use-engine.ts';
import { announce } from '../../../kit/announcer.tsx';
import { Button } from '../../../kit/button.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { setMachining } from '../machining-state.ts';
import { VerdictMark } from '../verdict-mark.tsx';

interface VerdictListProps {
  readonly model: SetupModel;
  readonly picked: VerdictRow | undefined;
}

/** All that is said of a set-up: how far it clears, where, by what, and what would mend it. */
export function VerdictList({ model, picked }: VerdictListProps) {
  const { verdicts, unknown, balance, balanceUnknown } = model;
  return (
    <Pane title="Verdicts" beside={<Count verdicts={verdicts} />}>
      <div className="verdicts">
        {unknown.length > 0 && (
          <section className="verdict-missing" aria-label="What keeps it from being judged">
            <p className="verdict-head">
              <VerdictMark state="unknown" word />
              It cannot be judged yet
            </p>
            <UnknownList rows={unknown} />
          </section>
        )}
        <ul className="verdict-list">
          {verdicts.map((row) => (
            <VerdictItem key={row.key} row={row} model={model} isPicked={row === picked} />
          ))}
        </ul>
        {(balance.length > 0 || balanceUnknown.length > 0) && (
          <section className="verdict-balance" aria-label="Balance">
            <h3 className="lettering soft">Balance</h3>
            <dl>
              {balance.map(({ name, value }) => (
                <div key={name}>
                  <dt>{name}</dt>
                  <dd className="figure">{value}</dd>
                </div>
              ))}
            </dl>
            {balanceUnknown.length > 0 && <UnknownList rows={balanceUnknown} />}
          </section>
        )}
      </div>
    </Pane>
  );
}

function Count({ verdicts }: { readonly verdicts: readonly VerdictRow[] }) {
  const hits = verdicts.filter(({ state }) => state === 'hits').length;
  if (verdicts.length === 0) return null;
  if (hits > 0) {
    return (
      <span className="mark stop">
        <VerdictMark state="hits" />
        <span className="figure">{hits}</span>
      </span>
    );
  }
  const worst = (['at the limit', 'unknown'] as const).find((state) => verdicts.some((row) => row.state === state));
  return <VerdictMark state={worst ?? 'clears'} word />;
}

interface VerdictItemProps {
  readonly row: VerdictRow;
  readonly model: SetupModel;
  readonly isPicked: boolean;
}

function VerdictItem({ row, model, isPicked }: VerdictItemProps) {
  return (
    <li className="verdict" aria-current={isPicked ? 'true' : undefined} data-verdict={row.shown.kind}>
      <button type="button" className="verdict-go" onClick={() => setMachining({ verdict: row.key })}>
        <VerdictMark state={row.state} />
        <span className="verdict-words">
          <span className="verdict-title">{row.title}</span>
          {row.operation !== undefined && <span className="soft">for {row.operation.name}</span>}
        </span>
        <span className="verdict-margin figure">{row.margin ?? 'not known'}</span>
      </button>
      {isPicked && <Detail row={row} model={model} />}
    </li>
  );
}

function Detail({ row, model }: { readonly row: VerdictRow; readonly model: SetupModel }) {
  return (
    <div className="verdict-detail">
      <dl className="verdict-facts">
        {row.has !== undefined && row.needs !== undefined && (
          <>
            <div>
              <dt>There is</dt>
              <dd className="figure">{row.has}</dd>
            </div>
            <div>
              <dt>It takes</dt>
              <dd className="figure">{row.needs}</dd>
            </div>
          </>
        )}
        {row.band !== undefined && (
          <div>
            <dt>Limits counted</dt>
            <dd className="figure">{row.band}</dd>
          </div>
        )}
        {row.at !== undefined && (
          <div>
            <dt>At its worst</dt>
            <dd>{row.at}</dd>
          </div>
        )}
        {row.carriedBy !== undefined && (
          <div>
            <dt>Carried by</dt>
            <dd>
              <Carrier carriedBy={row.carriedBy} />
            </dd>
          </div>
        )}
      </dl>
      {row.shares.length > 0 && (
        <ul className="verdict-shares" aria-label="Dimensions that carry it">
          {row.shares.map((share) => (
            <li key={share.dimension}>
              <button
                type="button"
                className="verdict-share"
                onClick={() => goTo({ department: 'drawing', part: share.part, subject: share.dimension })}
              >
                <span className="ellipsis grow">
                  {share.name}
                  {share.of !== undefined && <span className="soft"> of {share.of}</span>}
                </span>
                <span className="figure">{share.value}</span>
                <span className="soft verdict-share-words">{share.words}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      {row.unknown.length > 0 && <UnknownList rows={row.unknown} />}
      {row.remedies.length > 0 && <Remedies rows={row.remedies} model={model} />}
    </div>
  );
}

function Carrier({ carriedBy }: { readonly carriedBy: NonNullable<VerdictRow['carriedBy']> }) {
  const { words, part, body } = carriedBy;
  if (body === undefined) return words;
  return (
    <button
      type="button"
      className="verdict-link"
      onClick={() => goTo({ department: 'drawing', part, subject: body as RecordId })}
    >
      {words}
    </button>
  );
}

function UnknownList({ rows }: { readonly rows: readonly UnknownRow[] }) {
  return (
    <ul className="verdict-unknown">
      {rows.map((row) => (
        <li key={row.sentence}>
          {row.go === undefined ? (
            row.sentence
          ) : (
            <button type="button" className="verdict-link" onClick={() => goToUnknown(row.go)}>
              {row.sentence}
            </button>
          )}
        </li>
      ))}
    </ul>
  );
}

/** Goes to where what is not known is given. */
export function goToUnknown(go: UnknownRow['go']): void {
  if (go?.to === 'drawing') goTo({ department: 'drawing', part: go.part, subject: go.subject as RecordId });
  else if (go?.to === 'machine') setMachining({ desk: 'machines', machine: go.machine as MachineId, figure: go.key });
  else if (go?.to === 'field') document.querySelector<HTMLElement>('.setup-form input, .setup-form select')?.focus();
}

function Remedies({ rows, model }: { readonly rows: readonly RemedyRow[]; readonly model: SetupModel }) {
  const engine = useEngine();
  const editable = useIsEditable();
  const setup = model.record.id;
  const take = async ({ act, words }: RemedyRow) => {
    const outcome = await run();
    notifyOutcome(outcome);
    if (outcome.ok) announce(`Done: ${words}.`);
    function run() {
      switch (act.is) {
        case 'dimension':
          return engine.run('dimension-set', {
            changes: [{ dimension: act.dimension, set: { value: act.written } }],
          });
        case 'machine':
          return engine.run('setup-set', { setup, set: { machine: act.machine } });
        case 'holding':
          return engine.run('setup-set', { setup, set: { holding: act.holding } });
        case 'end-for-end':
          return engine.run('setup-set', {
            setup,
            set: { headEnd: model.record.headEnd === 'low' ? 'high' : 'low' },
          });
        case 'after':
          return engine.run('setup-set', { setup, set: { state: { is: 'after', operation: act.operation } } });
      }
    }
  };
  return (
    <div className="verdict-remedies">
      <h4 className="lettering soft">What would mend it</h4>
      <ul>
        {rows.map((row) => (
          <li key={row.words}>
            <span className="grow">{row.words}</span>
            {row.act.is === 'dimension' && <GoToDimension act={row.act} />}
            {editable && (
              <Button onClick={() => void take(row)} aria-label={`Do it: ${row.words}`}>
                Do It
              </Button>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}

function GoToDimension({ act }: { readonly act: Extract<RemedyRow['act'], { is: 'dimension' }> }) {
  return (
    <Button
      look="quiet"
      onClick={() => goTo({ department: 'drawing', part: act.part, subject: act.dimension })}
      aria-label="Show the dimension in the Drawing Office"
    >
      Show
    </Button>
  );
}
