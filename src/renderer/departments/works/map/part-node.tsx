import { Handle, type NodeProps, Position } from '@xyflow/react';
import { memo } from 'react';
import { goTo } from '../../../app/place.ts';
import type { PartLine } from '../../../engine/views/summary.ts';
import { classNames } from '../../../kit/class-names.ts';
import { DownIcon, RightIcon } from '../../../kit/icons.tsx';
import { GateMark, SeverityMark } from '../../../kit/marks.tsx';
import { setOpened } from '../works-state.ts';
import type { PartNode } from './graph.ts';
import { Sheet } from './sheet.tsx';

/** Open findings of a part: shape and figure, the word for the ear. */
export function PartMarks({ counts }: { readonly counts: PartLine['counts'] }) {
  return (
    <span className="block-marks">
      {counts.stop > 0 && <SeverityMark severity="stop" count={counts.stop} />}
      {counts.caution > 0 && <SeverityMark severity="caution" count={counts.caution} />}
      {counts.note > 0 && <SeverityMark severity="note" count={counts.note} />}
    </span>
  );
}

/** Short beside the gate's shape; the whole sentence is for the ear. */
const gateWords = { open: 'clear', shut: 'not clear', 'not needed': 'no gate' } as const;

/** The id of a part's element, by which the map names the selected one. */
export const nodeElementId = (part: string): string => `works-map-${part}`;

/** A part as the title block of its drawing; opened, its stations and dimensions hang below. */
export const PartBlock = memo(({ data }: NodeProps<PartNode>) => {
  const { part, rows, look, selected, subject, lit } = data;
  const [gate] = part.gates;
  const open = rows !== undefined;
  return (
    <div id={nodeElementId(part.id)} className={classNames('block', look, selected && 'selected', open && 'open')}>
      <Handle type="target" position={Position.Top} isConnectable={false} />
      <div className="block-head">
        <div className="block-name">
          <button
            type="button"
            className="block-toggle nodrag"
            tabIndex={-1}
            aria-expanded={open}
            aria-label={`${open ? 'Close' : 'Open'} ${part.name} in place`}
            onClick={(event) => {
              event.stopPropagation();
              goTo({ part: part.id });
              setOpened(part.id, !open);
            }}
          >
            {open ? <DownIcon /> : <RightIcon />}
          </button>
          <span className="ellipsis grow">{part.name}</span>
          <PartMarks counts={part.counts} />
        </div>
        <div className="block-cells">
          <span className="figure ellipsis">{part.number === '' ? 'no number' : part.number}</span>
          <span>{part.make}</span>
          {gate !== undefined && (
            <span className={`block-gate ${gate.state === 'not needed' ? 'not-needed' : gate.state}`}>
              <GateMark gate={gate.gate} state={gate.state} />
              <span className="lettering" aria-hidden="true">
                {gateWords[gate.state]}
              </span>
            </span>
          )}
        </div>
        <div className="block-cells">
          <span className="ellipsis grow">{part.material === '' ? <em>no material</em> : part.material}</span>
          <span className="figure">× {part.quantity}</span>
        </div>
      </div>
      {rows !== undefined && <Sheet part={part.id} rows={rows} subject={subject} lit={lit} />}
      <Handle type="source" position={Position.Bottom} isConnectable={false} />
    </div>
  );
});
