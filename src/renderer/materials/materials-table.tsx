import { type ReactNode, useRef, useState } from 'react';
import type { MaterialLine } from '../engine/views/materials.ts';
import { DownIcon, RightIcon } from '../kit/icons.tsx';
import { useRoving } from '../kit/roving.ts';
import { type FigureName, figureText } from './figures.ts';
import { statusWords } from './words.ts';

interface MaterialsTableProps {
  readonly lines: readonly MaterialLine[];
  /** Key of the row whose fields are on show. */
  readonly open: string | undefined;
  readonly onToggle: (key: string) => void;
  readonly detailOf: (line: MaterialLine) => ReactNode;
}

const heads = ['Density', 'Expansion', 'Modulus'] as const;
const units = ['g/cm³', '10⁻⁶/K', 'GPa'] as const;
const COLUMNS = 7;

/** Rows of materials with one tab stop; arrows and letters go from row to row, Enter opens one in its place. */
export function MaterialsTable({ lines, open, onToggle, detailOf }: MaterialsTableProps) {
  const table = useRef<HTMLTableElement>(null);
  const [at, setAt] = useState<string>();
  const held = lines.findIndex(({ key }) => key === (at ?? open));
  const active = Math.max(0, held);
  const roving = useRoving({
    count: lines.length,
    active,
    onActive: (index) => {
      const key = lines[index]?.key;
      if (key === undefined) return;
      setAt(key);
      table.current?.querySelector<HTMLElement>(`[data-row="${CSS.escape(key)}"] button`)?.focus();
    },
    textAt: (index) => lines[index]?.name ?? '',
  });
  const own = lines.filter((line) => line.own !== undefined);
  const others = lines.filter((line) => line.own === undefined);
  const tabStop = lines[active]?.key;
  const row = (line: MaterialLine) => {
    const isOpen = line.key === open;
    return (
      <tbody key={line.key} className={isOpen ? 'material open' : 'material'}>
        <tr data-row={line.key} className="material-row" onClick={() => onToggle(line.key)}>
          <th scope="row">
            <button
              type="button"
              className="material-name"
              aria-expanded={isOpen}
              tabIndex={line.key === tabStop ? 0 : -1}
              onFocus={() => setAt(line.key)}
              onKeyDown={(event) => void roving(event)}
              onClick={(event) => {
                event.stopPropagation();
                onToggle(line.key);
              }}
            >
              {isOpen ? <DownIcon /> : <RightIcon />}
              <span className="ellipsis">{line.name}</span>
            </button>
          </th>
          <FigureCell line={line} name="densityKgM3" />
          <FigureCell line={line} name="expansionPerK" />
          <FigureCell line={line} name="modulusGPa" />
          <td className="figure">{line.known.cuttingGroup ?? <Unknown />}</td>
          <td className="soft">{line.isBehind ? 'behind own' : statusWords[line.status]}</td>
          <td className="material-source ellipsis soft">{line.source}</td>
        </tr>
        {isOpen && (
          <tr>
            <td colSpan={COLUMNS}>{detailOf(line)}</td>
          </tr>
        )}
      </tbody>
    );
  };
  return (
    <div className="materials-scroll">
      <table ref={table} className="materials-table">
        <caption className="unseen">Materials of the build’s own, and of the table</caption>
        <thead>
          <tr className="lettering soft">
            <th scope="col">Material</th>
            {heads.map((head, i) => (
              <th key={head} scope="col">
                {head}
                <span className="material-unit">{units[i]}</span>
              </th>
            ))}
            <th scope="col">Group</th>
            <th scope="col">Known</th>
            <th scope="col">Source</th>
          </tr>
        </thead>
        {own.length > 0 && <GroupHead title="The build’s own" />}
        {own.map(row)}
        {others.length > 0 && <GroupHead title="Of the table, for reading" />}
        {others.map(row)}
      </table>
    </div>
  );
}

function GroupHead({ title }: { readonly title: string }) {
  return (
    <tbody>
      <tr>
        <th scope="rowgroup" colSpan={COLUMNS} className="material-group lettering soft">
          {title}
        </th>
      </tr>
    </tbody>
  );
}

function FigureCell({ line, name }: { readonly line: MaterialLine; readonly name: FigureName }) {
  return <td className="figure material-figure">{figureText(line.known, name) ?? <Unknown />}</td>;
}

const Unknown = () => (
  <>
    <span aria-hidden="true" className="soft">
      —
    </span>
    <span className="unseen">not known</span>
  </>
);
