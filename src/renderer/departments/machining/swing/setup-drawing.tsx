import { memo, useId, useMemo } from 'react';
import type { PictureItem, PictureView } from '../../../../shared/machining/picture/picture.ts';
import type { Point, SeenWork } from '../../../../shared/machining/picture/scene.ts';
import type { LengthUnit } from '../../../../shared/quantity/kind.ts';
import { type Board, pathOf } from './board.ts';
import { MeasureMark } from './measure-mark.tsx';

interface SetupDrawingProps {
  readonly view: PictureView;
  readonly board: Board;
  /** The work as this view sees it; undefined while its solid is being made. */
  readonly work: SeenWork | undefined;
  readonly unit: LengthUnit;
}

/** Letters of names, px: about so wide each. */
const LETTER_PX = 6.4;
/** And so high, with a little air. */
const HIGH_PX = 13;

/** One view of a set-up in the window. Lines keep their width however large it is drawn. */
export function SetupDrawing({ view, board, work, unit }: SetupDrawingProps) {
  const id = useId();
  return (
    <g className={`swing-view ${view.side}`}>
      <Hatching id={id} />
      {view.items.map((item, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: marks have no identity, they are drawn in order
        <Mark key={i} item={item} board={board} work={work} unit={unit} hatch={id} />
      ))}
    </g>
  );
}

/** Lines aslant: what is cut, and what may not be where it is, is told by more than colour. */
function Hatching({ id }: { readonly id: string }) {
  return (
    <defs>
      <pattern id={`${id}hit`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width="7" height="7" className="swing-hit-ground" />
        <line x1="0" y1="0" x2="0" y2="7" className="swing-hit-line" />
      </pattern>
      <pattern id={`${id}metal`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
        <rect width="6" height="6" className="swing-metal-ground" />
        <line x1="0" y1="0" x2="0" y2="6" className="swing-metal-line" />
      </pattern>
    </defs>
  );
}

interface MarkProps {
  readonly item: PictureItem;
  readonly board: Board;
  readonly work: SeenWork | undefined;
  readonly unit: LengthUnit;
  readonly hatch: string;
}

function Mark({ item, board, work, unit, hatch }: MarkProps) {
  switch (item.is) {
    case 'area': {
      const d = item.loops.map((loop) => pathOf(board, loop, true)).join('');
      const pattern = item.role === 'collision' ? 'hit' : item.role === 'bed' ? 'metal' : undefined;
      // A pattern goes by its id, which a style sheet does not know.
      const style = pattern === undefined ? undefined : { fill: `url(#${hatch}${pattern})` };
      return <path className={`swing-area ${item.role}`} d={d} style={style} />;
    }
    case 'line':
      return <path className={`swing-line ${item.role}`} d={pathOf(board, item.points, item.closed)} />;
    case 'work':
      return work === undefined ? null : <Work work={work} board={board} />;
    case 'measure':
      return <MeasureMark item={item} board={board} unit={unit} />;
    case 'name': {
      const [wide, high] = item.room;
      if (wide * board.scale < item.text.length * LETTER_PX + 4 || high * board.scale < HIGH_PX) return null;
      const [x, y] = board.at(item.at);
      return (
        <text className={`swing-name ${item.of}`} x={x} y={y} dy="0.36em" textAnchor="middle">
          {item.text}
        </text>
      );
    }
  }
}

/** It stays while the saddle moves. */
const Work = memo(function Work({ work, board }: { readonly work: SeenWork; readonly board: Board }) {
  const cover = useMemo(() => work.cover.map((loop) => pathOf(board, loop, true)).join(''), [work, board]);
  const lines = useMemo(
    () => work.lines.map((points: readonly Point[]) => pathOf(board, points, false)).join(''),
    [work, board],
  );
  return (
    <g>
      <path className="swing-work-cover" d={cover} />
      <path className="swing-work-lines" d={lines} />
    </g>
  );
});
