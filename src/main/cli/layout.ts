/** Width that every terminal and every mail shows without breaking lines. */
const WIDTH = 80;

/** Breaks a text into lines between its words; words longer than a line stand alone. */
function wrap(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) {
    let line = '';
    for (const word of paragraph.split(/\s+/).filter((part) => part !== '')) {
      if (line === '') line = word;
      else if (line.length + 1 + word.length <= width) line += ` ${word}`;
      else {
        lines.push(line);
        line = word;
      }
    }
    lines.push(line);
  }
  return lines;
}

/** A text as lines that all begin after the same indent. */
export const indented = (text: string, indent: number): string =>
  wrap(text, WIDTH - indent)
    .map((line) => ' '.repeat(indent) + line)
    .join('\n');

export interface Column {
  readonly head: string;
  readonly align?: 'right';
}

/** Columns never get narrower than this for the sake of the whole. */
const NARROWEST = 8;
const GAP = 2;

/** Lines up cells in columns; where they do not fit the width, the widest columns break their texts over several lines. */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[], indent = 2): string {
  const widths = columns.map(({ head }, i) => Math.max(head.length, ...rows.map((row) => row[i]?.length ?? 0)));
  const room = WIDTH - indent - GAP * (columns.length - 1);
  for (let total = sum(widths); total > room; total--) {
    const widest = widths.indexOf(Math.max(...widths));
    if ((widths[widest] ?? 0) <= NARROWEST) break;
    widths[widest] = (widths[widest] ?? 0) - 1;
  }
  const line = (cells: readonly string[]): string => {
    const broken = columns.map((_, i) => wrap(cells[i] ?? '', widths[i] ?? NARROWEST));
    const height = Math.max(...broken.map((lines) => lines.length));
    return Array.from({ length: height }, (_, y) =>
      (
        ' '.repeat(indent) +
        columns
          .map(({ align }, i) => {
            const text = broken[i]?.[y] ?? '';
            return align === 'right' ? text.padStart(widths[i] ?? 0) : text.padEnd(widths[i] ?? 0);
          })
          .join(' '.repeat(GAP))
      ).trimEnd(),
    ).join('\n');
  };
  return [line(columns.map(({ head }) => head)), ...rows.map(line)].join('\n');
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, n) => total + n, 0);

export interface Paint {
  bold(text: string): string;
  stop(text: string): string;
  caution(text: string): string;
  quiet(text: string): string;
}

/** Marks for a terminal (ECMA-48), or none. */
export function paint(colour: boolean): Paint {
  const mark = (code: string) => (text: string) => (colour ? `\u001b[${code}m${text}\u001b[0m` : text);
  return { bold: mark('1'), stop: mark('1;31'), caution: mark('33'), quiet: mark('2') };
}
