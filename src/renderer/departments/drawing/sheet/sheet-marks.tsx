import { memo } from 'react';
import { type LineKind, lineStyles, type Mark, type Sheet } from '../../../../shared/sheet/sheet.ts';
import { ASSUMED_DASHES_MM, BODY_PER_CAPITAL, pathData } from '../../../../shared/sheet/svg.ts';
import { classNames } from '../../../kit/class-names.ts';

interface SheetMarksProps {
  readonly sheet: Sheet;
  readonly lit: ReadonlySet<string>;
  readonly also: ReadonlySet<string>;
}

/** All marks of a sheet, in mm, y downwards. */
export const SheetMarks = memo(function SheetMarks({ sheet, lit, also }: SheetMarksProps) {
  const look = (mark: Mark) =>
    mark.stands.some((id) => lit.has(id)) ? 'lit' : mark.stands.some((id) => also.has(id)) ? 'also' : undefined;
  // What is picked out lies on top, whatever is drawn over it otherwise.
  const order = [...sheet.marks.keys()].sort(
    (a, b) => Number(look(sheet.marks[a]!) === 'lit') - Number(look(sheet.marks[b]!) === 'lit') || a - b,
  );
  return order.map((i) => (
    <OneMark key={i} mark={sheet.marks[i]!} heightMm={sheet.heightMm} look={look(sheet.marks[i]!)} />
  ));
});

interface OneMarkProps {
  readonly mark: Mark;
  readonly heightMm: number;
  readonly look: 'lit' | 'also' | undefined;
}

const isThick = (kind: LineKind): boolean => lineStyles[kind].widthMm >= 0.5;

const OneMark = memo(function OneMark({ mark, heightMm, look }: OneMarkProps) {
  const shared = { 'data-stands': mark.stands[0] };
  switch (mark.is) {
    case 'fill':
      return (
        <path
          {...shared}
          className={classNames('sheet-fill', mark.style, look)}
          d={pathData(mark.points, true, heightMm)}
        />
      );
    case 'line': {
      const { dashesMm } = lineStyles[mark.kind];
      const dashes = mark.style === 'assumed' && dashesMm.length === 0 ? ASSUMED_DASHES_MM : dashesMm;
      return (
        <path
          {...shared}
          className={classNames('sheet-line', mark.kind, isThick(mark.kind) ? 'thick' : 'thin', mark.style, look)}
          d={pathData(mark.points, mark.closed, heightMm)}
          strokeDasharray={dashes.length === 0 ? undefined : dashes.join(' ')}
        />
      );
    }
    case 'text': {
      const [x, y] = [mark.at[0], heightMm - mark.at[1]];
      return (
        <text
          {...shared}
          className={classNames('sheet-text', mark.style, mark.bold && 'bold', mark.underlined && 'underlined', look)}
          x={x}
          y={y}
          fontSize={mark.heightMm * BODY_PER_CAPITAL}
          textLength={mark.widthMm}
          lengthAdjust="spacingAndGlyphs"
          textAnchor={mark.anchor}
          transform={mark.turn === 0 ? undefined : `rotate(-90 ${x} ${y})`}
        >
          {mark.text}
        </text>
      );
    }
  }
});
