import type { PictureItem } from '../../../../shared/machining/picture/picture.ts';
import type { LengthUnit } from '../../../../shared/quantity/kind.ts';
import { clearanceWords, roundedLength } from '../../../engine/machining/rounded-length.ts';
import type { Board } from './board.ts';

interface MeasureMarkProps {
  readonly item: Extract<PictureItem, { is: 'measure' }>;
  readonly board: Board;
  readonly unit: LengthUnit;
}

const ARROW_PX = 7;
/** Shorter than this the arrows stand outside, as on a drawing. */
const INSIDE_PX = 22;
const OUT_PX = 22;
const ASIDE_PX = 20;
const LETTER_PX = 7.2;

/** A distance between two places: lines and arrows, and what it means in words. */
export function MeasureMark({ item, board, unit }: MeasureMarkProps) {
  const [x0, y0] = board.at(item.from);
  const [x1, y1] = board.at(item.to);
  const length = Math.hypot(x1 - x0, y1 - y0);
  const [ux, uy] = length < 1e-6 ? [0, 1] : [(x1 - x0) / length, (y1 - y0) / length];
  const isUpright = Math.abs(uy) > Math.abs(ux);
  const inside = length >= INSIDE_PX;
  const way = inside ? 1 : -1;
  const arrow = (x: number, y: number, sign: number) => {
    const [bx, by] = [x + ux * ARROW_PX * sign, y + uy * ARROW_PX * sign];
    return `M${x} ${y}L${bx - uy * 2.6} ${by + ux * 2.6}L${bx + uy * 2.6} ${by - ux * 2.6}Z`;
  };
  const line = inside
    ? `M${x0} ${y0}L${x1} ${y1}`
    : `M${x0 - ux * OUT_PX} ${y0 - uy * OUT_PX}L${x0} ${y0}M${x1} ${y1}L${x1 + ux * OUT_PX} ${y1 + uy * OUT_PX}M${x0} ${y0}L${x1} ${y1}`;
  // Ticks across the ends show the places that are meant, however short the distance.
  const tick = (x: number, y: number) => `M${x - uy * 16} ${y + ux * 16}L${x + uy * 16} ${y - ux * 16}`;
  const text = textOf(item, unit);
  const reach = text.length * LETTER_PX + ASIDE_PX;
  // Where there is no room to the right the figure stands to the left.
  const toLeft = isUpright && x0 + reach > board.sheet && x0 - reach > 0;
  const [tx, ty] = isUpright
    ? [x0 + (toLeft ? -ASIDE_PX : ASIDE_PX), (y0 + y1) / 2]
    : [(x0 + x1) / 2, Math.min(y0, y1) - 8];
  return (
    <g className={`swing-measure ${item.state.replaceAll(' ', '-')}`}>
      <path className="swing-measure-line" d={`${line}${tick(x0, y0)}${tick(x1, y1)}`} />
      <path className="swing-measure-arrow" d={`${arrow(x0, y0, way)}${arrow(x1, y1, -way)}`} />
      <text x={tx} y={ty} dy={isUpright ? '0.36em' : 0} textAnchor={!isUpright ? 'middle' : toLeft ? 'end' : 'start'}>
        {text}
      </text>
    </g>
  );
}

function textOf({ means, mm, state }: MeasureMarkProps['item'], unit: LengthUnit): string {
  if (means === 'needed') return roundedLength(mm, unit);
  const words = clearanceWords(mm, unit);
  return state === 'at the limit' ? `${words}, at the limit` : words;
}
