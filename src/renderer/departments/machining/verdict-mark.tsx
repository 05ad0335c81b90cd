import type { VerdictState } from '../../../shared/machining/setup-check.ts';
import { AcceptedIcon, CautionIcon, StopIcon, UnknownIcon } from '../../kit/icons.tsx';

const icons = {
  clears: AcceptedIcon,
  'at the limit': CautionIcon,
  hits: StopIcon,
  unknown: UnknownIcon,
} as const;

const words: Readonly<Record<VerdictState, string>> = {
  clears: 'clears',
  'at the limit': 'clears unless at the limit',
  hits: 'hits',
  unknown: 'not known',
};

const classes: Readonly<Record<VerdictState, string>> = {
  clears: 'open',
  'at the limit': 'caution',
  hits: 'stop',
  unknown: 'note',
};

/** Shape, word and colour of what is said of a set-up. */
export function VerdictMark({ state, word = false }: { readonly state: VerdictState; readonly word?: boolean }) {
  const Icon = icons[state];
  return (
    <span className={`mark ${classes[state]}`}>
      <Icon />
      <span className={word ? 'lettering' : 'unseen'}>{words[state]}</span>
    </span>
  );
}
