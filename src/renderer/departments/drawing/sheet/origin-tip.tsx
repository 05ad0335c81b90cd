import { useId } from 'react';
import type { RecordId } from '../../../../shared/build/records.ts';
import { useView } from '../../../engine/use-engine.ts';
import { TipBox } from '../../../kit/tip.tsx';

const STEPS = 6;

interface OriginTipProps {
  readonly id: RecordId;
  readonly anchor: DOMRect;
}

/** Where a figure on the sheet comes from: its value, its limits and their table row, the steps behind it. */
export function OriginTip({ id, anchor }: OriginTipProps) {
  const tip = useId();
  const trace = useView('trace', { id });
  if (trace === undefined) return null;
  const steps = trace.steps.filter((step) => step.id !== id);
  return (
    <TipBox id={tip} anchor={anchor}>
      <strong>{trace.name}</strong> {trace.value !== undefined && <span className="figure">{trace.value}</span>}
      {trace.problem !== undefined && <div>{trace.problem}</div>}
      {trace.band !== undefined && (
        <div className="soft">
          <span className="figure">{trace.band}</span>
          {trace.limitsRow !== undefined && `, ${trace.limitsRow}`}
        </div>
      )}
      {trace.kind === 'dimension' && trace.steps[0] !== undefined && (
        <div className="soft">
          {trace.steps[0].written === '' ? 'not written' : `written ${trace.steps[0].written}`}, {trace.steps[0].source}
        </div>
      )}
      {steps.slice(0, STEPS).map((step, i) => (
        // A dimension may stand in a formula's tree more than once: its place in the list is its identity here.
        // biome-ignore lint/suspicious/noArrayIndexKey: see above
        <div key={`${step.id} ${i}`} className="soft">
          {step.name} <span className="figure">{step.value}</span>
        </div>
      ))}
      {steps.length > STEPS && <div className="soft">and {steps.length - STEPS} more</div>}
    </TipBox>
  );
}
