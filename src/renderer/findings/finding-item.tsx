import { memo, useState } from 'react';
import { notifyOutcome } from '../app/notices.ts';
import { goTo, usePlace } from '../app/place.ts';
import { useEngine, useIsEditable } from '../engine/use-engine.ts';
import type { FindingLine } from '../engine/views/findings.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { TextField } from '../kit/field.tsx';
import { AcceptedMark, SeverityMark } from '../kit/marks.tsx';
import { GiveFigures } from '../materials/give-figures.tsx';

/** Rules that ask for a value of a part's material. */
const asksOfMaterial: ReadonlySet<string> = new Set(['material-unknown-density']);

interface FindingItemProps {
  readonly finding: FindingLine;
  readonly showPart: boolean;
  /** Show what to do and the ways to accept, as the inspector does. */
  readonly full?: boolean;
}

const dayOf = (iso: string): string => {
  const time = new Date(iso);
  return Number.isNaN(time.getTime()) ? iso : time.toLocaleDateString('en-GB', { dateStyle: 'medium' });
};

/** Goes to what a finding points at: its part, its first subject, and the rest lit up with it. */
function goToFinding(finding: FindingLine): void {
  const [first, ...rest] = finding.at;
  const subject = first.startsWith('part:') || first.startsWith('settings:') ? undefined : first;
  const department = /^(setup|operation|machine):/.test(first) ? 'machining' : 'drawing';
  goTo({ department, ...(finding.part === undefined ? {} : { part: finding.part }), subject, also: rest });
}

/** One finding in words. A click on its sentence goes to its place. Kept while it says the same: there are hundreds. */
export const FindingItem = memo(function FindingItem({ finding, showPart, full = false }: FindingItemProps) {
  const engine = useEngine();
  const editable = useIsEditable();
  const { subject } = usePlace();
  const [accepting, setAccepting] = useState(false);
  const { accepted, lapsed } = finding;
  const here = subject !== undefined && finding.at[0] === subject;
  return (
    <li className="finding" aria-current={here && !full ? 'true' : undefined} data-rule={finding.rule}>
      <button type="button" className="finding-go" onClick={() => goToFinding(finding)}>
        {accepted === undefined ? <SeverityMark severity={finding.severity} /> : <AcceptedMark />}
        <span className="finding-words">
          {showPart && finding.partName !== '' && <span className="finding-part">{finding.partName}</span>}
          <span>{finding.sentence}</span>
          {finding.isBeingMeasured && (
            <span className="finding-remedy">Being measured anew: this was said before the last edit.</span>
          )}
          {accepted === undefined && finding.remedy !== '' && <span className="finding-remedy">{finding.remedy}</span>}
        </span>
      </button>
      {accepted !== undefined && (
        <p className="finding-under">
          Accepted {dayOf(accepted.at)}: “{accepted.reason}”
        </p>
      )}
      {lapsed !== undefined && accepted === undefined && (
        <p className="finding-under">
          Accepted {dayOf(lapsed.at)} at other figures (“{lapsed.reason}”): open again because they changed.
        </p>
      )}
      {editable && accepted === undefined && finding.part !== undefined && asksOfMaterial.has(finding.rule) && (
        <div className="finding-acts">
          <GiveFigures part={finding.part} />
        </div>
      )}
      {full && editable && (finding.acceptable || accepted !== undefined) && (
        <div className="finding-acts">
          {accepted === undefined ? (
            <Button onClick={() => setAccepting(true)}>Accept…</Button>
          ) : (
            <Button
              onClick={() =>
                void engine.run('acceptance-withdraw', { acceptance: accepted.id as never }).then(notifyOutcome)
              }
            >
              Re-open
            </Button>
          )}
        </div>
      )}
      {accepting && <AcceptDialog finding={finding} onClose={() => setAccepting(false)} />}
    </li>
  );
});

function AcceptDialog({ finding, onClose }: { readonly finding: FindingLine; readonly onClose: () => void }) {
  const engine = useEngine();
  const [reason, setReason] = useState(finding.lapsed?.reason ?? '');
  const [error, setError] = useState<string>();
  const accept = async () => {
    const { rule, key, figures } = finding;
    const outcome = await engine.run('finding-accept', { rule, finding: key, figures, reason });
    if (outcome.ok) onClose();
    else setError(outcome.sentence);
  };
  return (
    <Dialog
      title="Accept this finding"
      onClose={onClose}
      onSubmit={() => void accept()}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button look="main" type="submit">
            Accept
          </Button>
        </>
      }
    >
      <p>{finding.sentence}</p>
      <TextField label="Reason" value={reason} onChange={setReason} error={error} />
      <p className="soft">
        It stays in sight among the accepted ones, and opens again by itself when its figures change.
      </p>
    </Dialog>
  );
}
