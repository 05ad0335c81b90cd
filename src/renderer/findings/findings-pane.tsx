import { useEffect, useMemo, useRef, useState } from 'react';
import type { Severity } from '../../shared/check/rule.ts';
import { usePlace } from '../app/place.ts';
import { markPainted } from '../engine/stages.ts';
import { useView } from '../engine/use-engine.ts';
import type { FindingLine } from '../engine/views/findings.ts';
import { announce } from '../kit/announcer.tsx';
import { Button } from '../kit/button.tsx';
import { Empty } from '../kit/empty.tsx';
import { SeverityMark, severityWords } from '../kit/marks.tsx';
import { Pane } from '../kit/pane.tsx';
import { FindingItem } from './finding-item.tsx';

const none: readonly FindingLine[] = [];
const severities: readonly Severity[] = ['stop', 'caution', 'note'];
// A build of many faults shows them by the handful: a list of thousands helps nobody and slows the window.
const SHOWN_AT_FIRST = 60;

const departmentWords = {
  drawing: 'Drawing Office',
  pattern: 'Pattern Shop',
  foundry: 'Foundry',
  machining: 'Machine Shop',
  fitting: 'Fitting Shop',
  erecting: 'Erecting Shop',
} as const;

/** All findings by severity and department; each goes to its place. */
export function FindingsPane() {
  const { part } = usePlace();
  const [onlyPart, setOnlyPart] = useState(false);
  const [all, setAll] = useState(false);
  const filtered = onlyPart && part !== undefined;
  const known = useView('findings', { part: filtered ? part : null });
  const findings = known ?? none;
  const whole = useView('findings', { part: null });
  useAnnounced(whole);
  useEffect(() => {
    if (whole !== undefined) markPainted('findings');
  }, [whole]);
  const groups = useMemo(() => grouped(findings), [findings]);
  const open = findings.filter((finding) => finding.accepted === undefined).length;
  let room = all ? Number.POSITIVE_INFINITY : SHOWN_AT_FIRST;
  return (
    <Pane
      title="Findings"
      beside={known !== undefined && <span className="figure soft">{open}</span>}
      actions={
        <Button pressed={onlyPart} onClick={() => setOnlyPart(!onlyPart)}>
          This part only
        </Button>
      }
    >
      {known === undefined ? (
        <p className="findings-wait soft">The rules are looking through the build…</p>
      ) : findings.length === 0 ? (
        <Empty title={filtered ? 'Nothing to say of this part' : 'Nothing to say'}>
          <p>Every rule has looked and found nothing amiss. Findings appear here as you draw.</p>
        </Empty>
      ) : (
        <div className="findings">
          {groups.map(({ id, severity, department, items }) => {
            const shown = items.slice(0, Math.max(0, room));
            room -= shown.length;
            if (shown.length === 0) return null;
            return (
              <section
                key={id}
                aria-label={`${severity === undefined ? 'accepted' : severityWords[severity][1]}, ${departmentWords[department]}`}
              >
                <h3 className="findings-head">
                  {severity === undefined ? (
                    <span className="lettering soft">Accepted {items.length}</span>
                  ) : (
                    <SeverityMark severity={severity} count={items.length} word />
                  )}
                  <span className="lettering soft">{departmentWords[department]}</span>
                </h3>
                <ul>
                  {shown.map((finding) => (
                    <FindingItem key={finding.key} finding={finding} showPart={!filtered} />
                  ))}
                </ul>
              </section>
            );
          })}
          {findings.length > SHOWN_AT_FIRST && !all && (
            <div className="findings-more">
              <Button onClick={() => setAll(true)}>Show all {findings.length}</Button>
            </div>
          )}
        </div>
      )}
    </Pane>
  );
}

interface Group {
  readonly id: string;
  /** Undefined for those that were accepted. */
  readonly severity: Severity | undefined;
  readonly department: FindingLine['department'];
  readonly items: readonly FindingLine[];
}

function grouped(findings: readonly FindingLine[]): readonly Group[] {
  const items = new Map<string, FindingLine[]>();
  for (const finding of findings) {
    const id = `${finding.accepted === undefined ? finding.severity : undefined} ${finding.department}`;
    const list = items.get(id);
    if (list === undefined) items.set(id, [finding]);
    else list.push(finding);
  }
  const groups: Group[] = [];
  for (const severity of [...severities, undefined]) {
    for (const department of Object.keys(departmentWords) as FindingLine['department'][]) {
      const id = `${severity} ${department}`;
      const list = items.get(id);
      if (list !== undefined) groups.push({ id, severity, department, items: list });
    }
  }
  return groups;
}

/** Says in one sentence what came and what went, not finding by finding. */
function useAnnounced(findings: readonly FindingLine[] | undefined): void {
  const before = useRef<ReadonlySet<string>>(undefined);
  useEffect(() => {
    if (findings === undefined) return;
    const now = new Set(findings.filter((finding) => finding.accepted === undefined).map((finding) => finding.key));
    const then = before.current;
    before.current = now;
    if (then === undefined) return;
    const come = [...now].filter((key) => !then.has(key)).length;
    const gone = [...then].filter((key) => !now.has(key)).length;
    if (come + gone === 0) return;
    const words = [come > 0 && `${come} new`, gone > 0 && `${gone} settled`].filter(Boolean).join(', ');
    announce(`Findings: ${words}, ${now.size} open.`);
  }, [findings]);
}
