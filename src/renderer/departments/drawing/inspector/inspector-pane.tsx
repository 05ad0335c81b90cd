import type { ReactNode } from 'react';
import type { RecordId } from '../../../../shared/build/records.ts';
import { goTo, usePlace } from '../../../app/place.ts';
import { useIsEditable, useView } from '../../../engine/use-engine.ts';
import type { PartSheet } from '../../../engine/views/part.ts';
import type { Neighbour, Trace, TraceStep } from '../../../engine/views/trace.ts';
import { FindingItem } from '../../../findings/finding-item.tsx';
import { Button } from '../../../kit/button.tsx';
import { GateMark, SeverityMark } from '../../../kit/marks.tsx';
import { Pane } from '../../../kit/pane.tsx';
import { PartForm } from '../../../parts/part-form.tsx';
import { ConfirmAssumed } from './confirm-assumed.tsx';

/** The selected station or dimension, and where its number comes from; with nothing selected, the part's title block. */
export function InspectorPane({ sheet }: { readonly sheet: PartSheet }) {
  const { subject } = usePlace();
  const trace = useView('trace', { id: (subject ?? sheet.part.id) as RecordId });
  if (subject === undefined || trace === undefined) {
    return (
      <Pane title="Title block" beside={<PartGates part={sheet.part.id} />}>
        <PartForm key={sheet.part.id} part={sheet.part} />
      </Pane>
    );
  }
  return (
    <Pane
      title={titles[trace.kind]}
      actions={<Button onClick={() => goTo({ subject: undefined })}>Title block</Button>}
    >
      <TraceSheet trace={trace} sheet={sheet} />
    </Pane>
  );
}

const titles: Readonly<Record<Trace['kind'], string>> = { station: 'Station', dimension: 'Dimension', body: 'Body' };

function PartGates({ part }: { readonly part: string }) {
  const line = useView('summary', null)?.parts.find(({ id }) => id === part);
  return line?.gates.map(({ gate, state }) => <GateMark key={gate} gate={gate} state={state} word />);
}

function Block({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className="trace-block">
      <h3 className="lettering soft">{title}</h3>
      {children}
    </section>
  );
}

function TraceSheet({ trace, sheet }: { readonly trace: Trace; readonly sheet: PartSheet }) {
  const editable = useIsEditable();
  const row = sheet.dimensions.find(({ record }) => record.id === trace.id);
  return (
    <div className="trace">
      <header className="trace-head">
        <span className="trace-name">{trace.name}</span>
        <span className="figure trace-value">
          {trace.value ?? (trace.kind === 'body' ? 'no solid yet' : 'no value')}
        </span>
        {trace.problem !== undefined && (
          <span className="mark stop trace-problem">
            <SeverityMark severity="stop" />
            <span>{trace.problem}</span>
          </span>
        )}
        {editable && row?.record.source === 'assumed' && <ConfirmAssumed dimension={row.record.id} />}
      </header>
      {trace.findings.length > 0 && (
        <Block title="Findings here">
          <ul className="trace-findings">
            {trace.findings.map((finding) => (
              <FindingItem key={finding.key} finding={finding} showPart={false} full />
            ))}
          </ul>
        </Block>
      )}
      {trace.band !== undefined && (
        <Block title={trace.kind === 'station' ? 'May stray by' : 'Limits'}>
          <dl className="trace-figures">
            <div>
              <dt>{trace.kind === 'station' ? 'at worst' : 'from … to'}</dt>
              <dd className="figure">{trace.band}</dd>
            </div>
            {trace.rss !== undefined && (
              <div>
                <dt>root sum square</dt>
                <dd className="figure">{trace.rss}</dd>
              </div>
            )}
          </dl>
          {trace.limitsRow !== undefined && <p className="soft trace-source">{trace.limitsRow}</p>}
        </Block>
      )}
      {trace.steps.length > 0 && (
        <Block title="Where does it come from?">
          <Steps steps={trace.steps} chain={trace.kind === 'station'} />
        </Block>
      )}
      <Neighbours title="Hangs on" list={trace.hangsOn} more={trace.hangsOnMore} />
      <Neighbours title="Touches" list={trace.touches} more={trace.touchesMore} />
    </div>
  );
}

/** The chain of dimensions behind a place, or the tree of a formula, each step as written and as it comes out. */
function Steps({ steps, chain }: { readonly steps: readonly TraceStep[]; readonly chain: boolean }) {
  return (
    <ol className={chain ? 'steps chain' : 'steps'}>
      {steps.map((step, i) => (
        // A dimension may stand in a formula's tree more than once: its place in the list is its identity here.
        // biome-ignore lint/suspicious/noArrayIndexKey: see above
        <li key={`${step.id} ${i}`} data-depth={Math.min(step.depth, 6)}>
          <button type="button" className="step" onClick={() => goTo({ subject: step.id })}>
            <span className="ellipsis grow">{step.name}</span>
            <span className="figure">{step.value}</span>
          </button>
          <span className="step-written soft">
            {step.written === '' ? 'not written' : <span className="figure">{step.written}</span>}, {step.source}
          </span>
        </li>
      ))}
    </ol>
  );
}

function Neighbours({
  title,
  list,
  more,
}: {
  readonly title: string;
  readonly list: readonly Neighbour[];
  readonly more: number;
}) {
  if (list.length === 0) return null;
  return (
    <Block title={`${title} ${list.length + more}`}>
      <ul className="neighbours">
        {list.map(({ id, name, part }) => (
          <li key={id}>
            <button type="button" className="neighbour" onClick={() => goTo({ part, subject: id })}>
              {name}
            </button>
          </li>
        ))}
        {more > 0 && <li className="soft">and {more} more: the dependency map shows them all</li>}
      </ul>
    </Block>
  );
}
