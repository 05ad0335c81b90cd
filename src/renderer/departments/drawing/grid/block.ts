/** A cell by row and column, counted from zero. */
export interface Cell {
  readonly row: number;
  readonly column: number;
}

/** A rectangle of cells, both ends included. */
export interface Block {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

export const blockOf = (a: Cell, b: Cell): Block => ({
  top: Math.min(a.row, b.row),
  bottom: Math.max(a.row, b.row),
  left: Math.min(a.column, b.column),
  right: Math.max(a.column, b.column),
});

export const inBlock = (block: Block, row: number, column: number): boolean =>
  row >= block.top && row <= block.bottom && column >= block.left && column <= block.right;

/**
 * Reads what a spreadsheet puts on the clipboard: tabs between cells, line ends between rows, cells that hold either (or
 * a quotation mark) in quotation marks, doubled inside.
 */
export function parseTsv(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let i = 0;
  const endCell = () => {
    row.push(cell);
    cell = '';
  };
  const endRow = () => {
    endCell();
    rows.push(row);
    row = [];
  };
  while (i < text.length) {
    const char = text[i]!;
    if (char === '"' && cell === '') {
      const quoted = readQuoted(text, i);
      if (quoted !== undefined) {
        cell = quoted.cell;
        i = quoted.next;
        continue;
      }
    }
    if (char === '\t') endCell();
    else if (char === '\n' || char === '\r') {
      endRow();
      if (char === '\r' && text[i + 1] === '\n') i++;
    } else cell += char;
    i++;
  }
  if (cell !== '' || row.length > 0) endRow();
  return rows;
}

/**
 * A block without its first line, when that holds the heads of columns and no figures: it is easily copied along.
 * @param heads the words that stand for a head, column by column from where the block is put
 */
export function withoutHeads(
  block: readonly (readonly string[])[],
  heads: readonly (readonly string[])[],
): readonly (readonly string[])[] {
  const [first, ...rest] = block;
  if (first === undefined || rest.length === 0) return block;
  const words = first.map((cell) => cell.trim().toLowerCase());
  const isHead = (word: string, c: number) => word === '' || (heads[c] ?? []).includes(word);
  return words.filter((word) => word !== '').length >= 2 && words.every(isHead) ? rest : block;
}

/** A cell in quotation marks that ends at a tab, a line end or the text's end; undefined: the mark is an inch or a plain one. */
function readQuoted(text: string, start: number): { readonly cell: string; readonly next: number } | undefined {
  let cell = '';
  for (let i = start + 1; i < text.length; i++) {
    if (text[i] !== '"') {
      cell += text[i];
      continue;
    }
    if (text[i + 1] === '"') {
      cell += '"';
      i++;
      continue;
    }
    const after = text[i + 1];
    return after === undefined || after === '\t' || after === '\n' || after === '\r'
      ? { cell, next: i + 1 }
      : undefined;
  }
  return undefined;
}

const needsMarks = /[\t\n\r]|^"/;

/** Writes a block for a spreadsheet; read back by {@link parseTsv} it is the same to the letter. */
export const writeTsv = (rows: readonly (readonly string[])[]): string =>
  rows
    .map((row) => row.map((cell) => (needsMarks.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join('\t'))
    .join('\n')
    .concat('\n');
