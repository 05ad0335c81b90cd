import type { Gate, GateState, Severity } from '../../shared/check/rule.ts';
import { AcceptedIcon, CautionIcon, GateNoneIcon, GateOpenIcon, GateShutIcon, NoteIcon, StopIcon } from './icons.tsx';

export const severityWords: Readonly<Record<Severity, readonly [one: string, many: string]>> = {
  stop: ['stop', 'stops'],
  caution: ['caution', 'cautions'],
  note: ['note', 'notes'],
};

const severityIcons = { stop: StopIcon, caution: CautionIcon, note: NoteIcon } as const;

interface SeverityMarkProps {
  readonly severity: Severity;
  /** Shown as a figure; without it the mark stands for one finding. */
  readonly count?: number;
  /** Show the word too (otherwise it is for the ear only). */
  readonly word?: boolean;
}

/** Shape, word and colour of a severity. */
export function SeverityMark({ severity, count, word = false }: SeverityMarkProps) {
  const Icon = severityIcons[severity];
  const [one, many] = severityWords[severity];
  return (
    <span className={`mark ${severity}`}>
      <Icon />
      {count !== undefined && <span className="figure">{count}</span>}
      <span className={word ? 'lettering' : 'unseen'}>{count === undefined || count === 1 ? one : many}</span>
    </span>
  );
}

export function AcceptedMark({ word = false }: { readonly word?: boolean }) {
  return (
    <span className="mark note">
      <AcceptedIcon />
      <span className={word ? 'lettering' : 'unseen'}>accepted</span>
    </span>
  );
}

const gateNames: Readonly<Record<Gate, string>> = { cut: 'cut', pour: 'pour', machine: 'machine', fit: 'fit' };
const gateIcons = { open: GateOpenIcon, shut: GateShutIcon, 'not needed': GateNoneIcon } as const;

/** The gate's state as a sentence: "clear to cut", "not clear to cut", "nothing to cut". */
export const gateSentence = (gate: Gate, state: GateState['state']): string =>
  state === 'open'
    ? `clear to ${gateNames[gate]}`
    : state === 'shut'
      ? `not clear to ${gateNames[gate]}`
      : `nothing to ${gateNames[gate]}`;

interface GateMarkProps {
  readonly gate: Gate;
  readonly state: GateState['state'];
  readonly word?: boolean;
}

export function GateMark({ gate, state, word = false }: GateMarkProps) {
  const Icon = gateIcons[state];
  return (
    <span className={`mark ${state === 'not needed' ? 'not-needed' : state}`}>
      <Icon />
      <span className={word ? 'lettering' : 'unseen'}>{gateSentence(gate, state)}</span>
    </span>
  );
}
