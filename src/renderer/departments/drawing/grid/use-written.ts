import { useRef, useState } from 'react';

/** Texts by column that were written into a row and are on their way to the engine. */
export type WrittenRow = ReadonlyMap<string, string>;

interface Written {
  of(row: string): WrittenRow | undefined;
  /** Shows a text in a cell from now on. @returns what ends that, unless the cell was written anew since. */
  write(row: string, column: string, text: string): () => void;
}

/** What was written into a table and is not taken yet: its cells show it meanwhile. */
export function useWritten(): Written {
  const [rows, setRows] = useState<ReadonlyMap<string, WrittenRow>>(new Map());
  // Two texts of one cell may be on their way, the same one even: each write is told by its number.
  const writes = useRef({ count: 0, last: new Map<string, number>() });
  return {
    of: (row) => rows.get(row),
    write(row, column, text) {
      const cell = `${row} ${column}`;
      const number = ++writes.current.count;
      writes.current.last.set(cell, number);
      setRows((now) => new Map(now).set(row, new Map(now.get(row)).set(column, text)));
      return () => {
        if (writes.current.last.get(cell) !== number) return;
        writes.current.last.delete(cell);
        setRows((now) => {
          const left = new Map(now.get(row));
          left.delete(column);
          const next = new Map(now);
          if (left.size > 0) next.set(row, left);
          else next.delete(row);
          return next;
        });
      };
    },
  };
}
