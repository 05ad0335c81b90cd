import { formatQuantity } from '../quantity/format.ts';
import { lineMark, plainOf } from './marks.ts';
import type { Box, FigureStyle, Mark, Point, Projection, Scale, SheetSubject, UnplacedLine } from './sheet.ts';
import { SMALL_MM, shortened, textMark, wrapped } from './text.ts';

/** Size of the title block, mm; it stands in the lower right corner of the frame (ISO 7200:2004). */
const WIDTH_MM = 110;
const ROW_MM = 6;
const NAME_MM = 10;

export const titleBox = ({ right, bottom }: Box): Box => ({
  left: right - WIDTH_MM,
  right,
  bottom,
  top: bottom + NAME_MM + 4 * ROW_MM,
});

/** The title block: what the part is, how it is drawn, and what the signs at its figures mean. */
export function titleBlock(
  { part, settings, state }: SheetSubject,
  scale: Scale,
  projection: Projection,
  box: Box,
  styles: ReadonlySet<FigureStyle>,
): readonly Mark[] {
  const owner = plainOf(undefined, part.id);
  const marks: Mark[] = [lineMark(owner, 'frame', corners(box), true)];
  const words = (text: string, row: number, from: number, to: number, label = '') => {
    const bottom = box.bottom + row * ROW_MM;
    const written = label === '' ? text : `${label} ${text}`;
    marks.push(
      textMark({
        text: shortened(written, SMALL_MM, to - from - 3),
        at: [box.left + from + 1.5, bottom + 1.8],
        heightMm: SMALL_MM,
        stands: [part.id],
      }),
    );
  };
  for (let row = 1; row <= 4; row++) {
    const y = box.bottom + row * ROW_MM;
    marks.push(
      lineMark(owner, 'rule', [
        [box.left, y],
        [box.right, y],
      ]),
    );
  }
  const half = WIDTH_MM / 2;
  marks.push(
    lineMark(owner, 'rule', [
      [box.left + half, box.bottom + 2 * ROW_MM],
      [box.left + half, box.bottom + 4 * ROW_MM],
    ]),
  );
  marks.push(
    textMark({
      text: shortened(part.name, 5, WIDTH_MM - 30),
      at: [box.left + 1.5, box.top - NAME_MM + 3],
      heightMm: 5,
      bold: true,
      stands: [part.id],
    }),
    ...projectionSymbol(projection, [box.right - 14, box.top - NAME_MM / 2]),
  );
  words(part.number === '' ? '—' : part.number, 3, 0, half, 'No.');
  words(
    [makeWords[part.make], part.quantity > 1 ? `${part.quantity} off` : ''].filter((word) => word !== '').join(', '),
    3,
    half,
    WIDTH_MM,
  );
  words(part.material === '' ? 'material not said' : part.material, 2, 0, half);
  words(`${scale.words}, ${state}`, 2, half, WIDTH_MM, 'Scale');
  const unit = settings.lengthUnit === 'mm' ? 'mm' : 'inch';
  const general = `ISO 2768-1 ${settings.machinedTolerance}, ISO 8062-3 DCTG ${settings.castingGrade}`;
  words(`${unit}; no limits written: ${general}`, 1, 0, WIDTH_MM);
  words(legend(styles) || settings.name, 0, 0, WIDTH_MM);
  return marks;
}

const makeWords = { cast: 'casting', stock: 'from stock', bought: 'bought' } as const;

const legend = (styles: ReadonlySet<FigureStyle>): string =>
  [
    styles.has('assumed') ? '? assumed' : '',
    styles.has('measured') ? 'underlined: measured' : '',
    styles.has('derived') ? '( ) derived' : '',
  ]
    .filter((word) => word !== '')
    .join(';  ');

const corners = ({ left, bottom, right, top }: Box): readonly Point[] => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];

/** The truncated cone in two views that says how views stand to one another (ISO 5456-2:1996, 5.2 and 5.3). */
function projectionSymbol(projection: Projection, [x, y]: Point): readonly Mark[] {
  const owner = plainOf(undefined);
  const side = projection === 'first' ? -1 : 1;
  // First angle: the cone's elevation stands left of its end view; third angle: right.
  const cone = x + side * 5;
  const end = x - side * 5;
  // Both circles are seen in the end view, so it is seen from the small end, which therefore lies on the left in either.
  const [small, large] = [cone - 4, cone + 4];
  const ring = (radius: number) =>
    Array.from({ length: 32 }, (_, i): Point => {
      const angle = (i * Math.PI) / 16;
      return [end + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    });
  return [
    lineMark(
      owner,
      'rule',
      [
        [small, y - 1.5],
        [large, y - 3],
        [large, y + 3],
        [small, y + 1.5],
      ],
      true,
    ),
    lineMark(owner, 'rule', ring(1.5), true),
    lineMark(owner, 'rule', ring(3), true),
    lineMark(owner, 'centre', [
      [cone - 5, y],
      [cone + 5, y],
    ]),
    lineMark(owner, 'centre', [
      [end - 4, y],
      [end + 4, y],
    ]),
    lineMark(owner, 'centre', [
      [end, y - 4],
      [end, y + 4],
    ]),
  ];
}

const TEXT_ROW_MM = 4.2;
const HEAD_MM = 6;

/** Room for the margin box above the title block; undefined when nothing is left over. */
export function marginBox(title: Box, frame: Box, lines: readonly UnplacedLine[]): Box | undefined {
  if (lines.length === 0) return undefined;
  const rows = marginRows(lines, frame).length;
  return {
    left: title.left,
    right: title.right,
    bottom: title.top,
    top: title.top + HEAD_MM + rows * TEXT_ROW_MM + 1.5,
  };
}

/** The box in the margin that lists what the views do not show. */
export function marginMarks(box: Box, frame: Box, lines: readonly UnplacedLine[]): readonly Mark[] {
  const owner = plainOf(undefined);
  const rows = Math.floor((box.top - box.bottom - HEAD_MM - 1.5) / TEXT_ROW_MM + 1e-6);
  const texts = marginRows(lines, frame, rows).map(({ text, of }, i) =>
    textMark({
      text,
      at: [box.left + 1.5, box.top - HEAD_MM - (i + 1) * TEXT_ROW_MM + 1.2],
      heightMm: SMALL_MM,
      stands: of ? [of.of.id] : [],
    }),
  );
  const heading = textMark({
    text: 'Not in the views',
    at: [box.left + 1.5, box.top - 4.2],
    heightMm: SMALL_MM,
    bold: true,
  });
  return [lineMark(owner, 'frame', corners(box), true), heading, ...texts];
}

interface MarginRow {
  readonly text: string;
  readonly of: UnplacedLine | undefined;
}

function marginRows(
  lines: readonly UnplacedLine[],
  frame: Box,
  most = Math.floor((0.4 * (frame.top - frame.bottom)) / TEXT_ROW_MM),
): readonly MarginRow[] {
  const rows: MarginRow[] = [];
  for (const [i, line] of lines.entries()) {
    const wrappedLine = wrapped(line.words, SMALL_MM, WIDTH_MM - 3);
    const isLast = i === lines.length - 1;
    if (rows.length + wrappedLine.length > most - (isLast ? 0 : 1)) {
      return [
        ...rows,
        { text: `… and ${formatQuantity(lines.length - i, 'number', { unit: 'mm' })} more`, of: undefined },
      ];
    }
    for (const text of wrappedLine) rows.push({ text, of: line });
  }
  return rows;
}
