import { useId } from 'react';
import type { PartLine } from '../../../engine/views/summary.ts';
import { TipBox } from '../../../kit/tip.tsx';
import type { LinkEdge } from './graph.ts';
import { findingsInWords, pairInWords } from './words.ts';

const PAIRS_SHOWN = 14;

interface LinkTipProps {
  readonly edge: LinkEdge;
  readonly at: { readonly x: number; readonly y: number };
  readonly parts: readonly PartLine[];
}

/** All that a line stands for: each name taken, by which dimension, and the findings at its ends. */
export function LinkTip({ edge, at, parts }: LinkTipProps) {
  const id = useId();
  if (edge.data === undefined) return null;
  const { link, pairs } = edge.data;
  const name = (part: string) => parts.find((each) => each.id === part)?.name ?? '';
  const findings = findingsInWords(link.marks);
  return (
    <TipBox id={id} anchor={{ left: at.x + 8, top: at.y - 4, bottom: at.y + 8 }}>
      <span className="tip-head">
        {name(link.from)} → {name(link.to)}
      </span>
      {pairs.slice(0, PAIRS_SHOWN).map((pair) => (
        <span key={`${pair.name} ${pair.by}`} className="tip-line">
          {pairInWords(pair)}
        </span>
      ))}
      {pairs.length > PAIRS_SHOWN && <span className="tip-line soft">and {pairs.length - PAIRS_SHOWN} more</span>}
      {findings !== undefined && <span className="tip-line tip-findings">Findings at its ends: {findings}</span>}
    </TipBox>
  );
}
