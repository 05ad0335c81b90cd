import type { PartId } from '../../../../shared/base/ids.ts';
import type { RecordId } from '../../../../shared/build/records.ts';
import { goTo } from '../../../app/place.ts';
import type { OpenedDimension, OpenedStation } from '../../../engine/views/opened.ts';
import { classNames } from '../../../kit/class-names.ts';
import { SeverityMark } from '../../../kit/marks.tsx';
import { CLOSED, rowPlaces, SHEET, type SheetRow } from './sheet-rows.ts';

interface SheetProps {
  readonly part: PartId;
  readonly rows: readonly SheetRow[];
  readonly subject: RecordId | undefined;
  /** What is lit up; undefined: nothing is, and nothing is dimmed. */
  readonly lit: ReadonlySet<string> | undefined;
}

/** The stations and dimensions of an opened part: which dimension places which station, and which feeds which. */
export function Sheet({ part, rows, subject, lit }: SheetProps) {
  const line = (each: OpenedDimension | OpenedStation | undefined, kind: 'dimension' | 'station') =>
    each === undefined ? (
      <span className={`sheet-${kind}`} />
    ) : (
      <button
        type="button"
        tabIndex={-1}
        className={classNames(
          `sheet-${kind} nodrag`,
          each.id === subject && 'selected',
          lit !== undefined && (lit.has(each.id) ? 'lit' : 'dim'),
          'source' in each && each.source === 'assumed' && 'assumed',
          'datum' in each && each.datum && 'datum',
        )}
        onClick={(event) => {
          event.stopPropagation();
          goTo({ part, subject: each.id });
        }}
        onDoubleClick={(event) => {
          event.stopPropagation();
          goTo({ department: 'drawing', part, subject: each.id });
        }}
      >
        <span className="ellipsis grow">{each.name}</span>
        {each.mark !== undefined && <SeverityMark severity={each.mark} />}
        <span className="figure">{each.value ?? (kind === 'station' ? 'not placed' : 'no value')}</span>
      </button>
    );
  return (
    <div className="sheet-rows">
      <Feeds rows={rows} lit={lit} subject={subject} />
      {rows.map((row) =>
        row.kind === 'head' ? (
          <div key={row.title} className="sheet-head">
            <span className="lettering">{row.title}</span>
            <span className="soft sheet-head-dimensions">{row.dimensions}</span>
            <span className="soft">{row.stations}</span>
          </div>
        ) : (
          <div key={row.dimension?.id ?? row.station?.id} className="sheet-row">
            {line(row.dimension, 'dimension')}
            <Places row={row} />
            {line(row.station, 'station')}
          </div>
        ),
      )}
    </div>
  );
}

/** An arrow from a dimension to the station that it places. */
function Places({ row }: { readonly row: SheetRow & { readonly kind: 'pair' } }) {
  const both = row.dimension !== undefined && row.station !== undefined;
  return (
    <svg className="sheet-places" width={SHEET.gutter} height={SHEET.row} aria-hidden="true">
      {both && <path d={`M4 ${SHEET.row / 2} H${SHEET.gutter - 4}`} markerEnd="url(#works-arrow)" />}
    </svg>
  );
}

/** Arcs in the margin, from a dimension to those whose formulas name it. */
function Feeds({ rows, lit, subject }: Pick<SheetProps, 'rows' | 'lit' | 'subject'>) {
  const places = rowPlaces(rows);
  const arcs = rows.flatMap((row) => {
    const to = row.kind === 'pair' ? row.dimension : undefined;
    const end = to === undefined ? undefined : places.get(to.id)?.middle;
    if (to === undefined || end === undefined) return [];
    return to.hangsOn.flatMap(({ id }) => {
      const start = places.get(id)?.middle;
      if (start === undefined) return [];
      const look = lit === undefined ? '' : lit.has(id) && lit.has(to.id) ? 'lit' : 'dim';
      const near = subject === id || subject === to.id;
      return [{ key: `${id} ${to.id}`, start: start - CLOSED.height, end: end - CLOSED.height, look, near }];
    });
  });
  return (
    <svg className="sheet-feeds" width={SHEET.margin} height={rows.length * SHEET.row} aria-hidden="true">
      {arcs.map(({ key, start, end, look, near }) => {
        const out = SHEET.margin - 4 - Math.min(SHEET.margin - 8, 8 + Math.abs(end - start) / 9);
        const right = SHEET.margin - 2;
        return (
          <path
            key={key}
            className={classNames(look, near && 'near')}
            d={`M${right} ${start} C${out} ${start} ${out} ${end} ${right} ${end}`}
            markerEnd="url(#works-arrow)"
          />
        );
      })}
    </svg>
  );
}
