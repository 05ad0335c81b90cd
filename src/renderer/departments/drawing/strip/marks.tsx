import type { CSSProperties } from 'react';
import type { RecordId } from '../../../../shared/build/records.ts';
import type { StripModel } from '../../../engine/views/strip.ts';
import { classNames } from '../../../kit/class-names.ts';
import { SeverityMark } from '../../../kit/marks.tsx';
import { arcPath, nameY, type PlacedArc, type StripLayout, type StripLook } from './layout.ts';
import { wordsOfArc, wordsOfStation } from './words.ts';

interface MarksProps {
  readonly model: StripModel;
  readonly layout: StripLayout;
  /** Ids that are selected or lit up with the selected one. */
  readonly lit: ReadonlySet<string>;
  readonly idPrefix: string;
  readonly onSelect: (id: RecordId, also?: readonly RecordId[]) => void;
  readonly onOpen: (id: RecordId) => void;
  readonly onHover: (id: string | undefined, element?: Element) => void;
}

// `d` moves by a CSS transition like any other property; React's types do not know it.
const pathStyle = (d: string): CSSProperties => ({ d: `path("${d}")` }) as CSSProperties;

/** The scale under the rule, faint: for the eye to measure by. */
export function Scale({
  marks,
  look,
  layout,
  unit,
}: {
  readonly marks: readonly { readonly place: number; readonly label: string }[];
  readonly look: StripLook;
  readonly layout: StripLayout;
  readonly unit: string;
}) {
  const top = -2_000;
  const foot = layout.height + 2_000;
  // Right of the datum's group stand groups whose place nobody knows: a scale there would be a lie.
  const end = layout.bases.length > 1 ? (layout.bases[0]?.x2 ?? 0) + 24 : Number.POSITIVE_INFINITY;
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus
    <g className="strip-scale" aria-hidden="true">
      {marks.map(({ place, label }) => {
        const x = (place - look.left) * look.scale;
        if (x > end) return null;
        return (
          <g key={label} transform={`translate(${x} 0)`}>
            <line y1={top} y2={foot} />
            <text y={layout.height - 4} x={3}>
              {label}
              {place === 0 ? ` ${unit}` : ''}
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** The rules that the ticks stand on: one for the datum's group, a dashed one for each that floats apart. */
export function Bases({ layout, model }: { readonly layout: StripLayout; readonly model: StripModel }) {
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus
    <g aria-hidden="true">
      {layout.bases.map(({ group, x1, x2, y, noteSide }) => {
        const floats = group > 0 || model.datum === undefined;
        return (
          <g key={group} className={floats ? 'strip-base floats' : 'strip-base'}>
            <line x1={x1 - 14} x2={x2 + 14} y1={y} y2={y} />
            {!floats && <line x1={x1 - 14} x2={x2 + 14} y1={y + 3} y2={y + 3} />}
            {noteSide !== undefined && (
              <text
                x={noteSide === 'right' ? x1 + 8 : x1 - 8}
                y={y + 16}
                textAnchor={noteSide === 'right' ? 'start' : 'end'}
                className="lettering"
              >
                not tied to the datum
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

/** A dashed ghost of the dimension that would bring a floating group in; a click adds it or goes to fill it in. */
export function Ties({
  layout,
  onTie,
}: {
  readonly layout: StripLayout;
  readonly onTie: (tie: StripModel['ties'][number]) => void;
}) {
  return layout.ties.map((placed) => {
    const { tie, label, labelX, y1, y2, height } = placed;
    const d = arcPath(placed);
    return (
      <g
        key={`${tie.from} ${tie.to}`}
        className={classNames('strip-tie', layout.tiesCrowded && 'crowded')}
        role="option"
        aria-selected={false}
        aria-label={`${tie.sentence}: it would tie the group to the datum`}
        tabIndex={-1}
        onClick={() => onTie(tie)}
        onKeyDown={(event) => event.key === 'Enter' && onTie(tie)}
      >
        <path className="hit" d={d} />
        <path d={d} />
        <text x={labelX} y={Math.min(y1, y2) - height - 6} textAnchor="middle">
          {label}
        </text>
      </g>
    );
  });
}

/** Dimensions as arcs. */
export function Arcs({ model, layout, lit, idPrefix, onSelect, onOpen, onHover }: MarksProps) {
  // What is lit lies on top of the rest.
  // A dimension without a value that is offered as the tie is drawn as that.
  const offered = new Set(model.ties.map((tie) => tie.dimension));
  const shown = layout.arcs.filter(({ arc }) => !offered.has(arc.id));
  const ordered = shown.toSorted((a, b) => Number(lit.has(a.arc.id)) - Number(lit.has(b.arc.id)));
  return ordered.map((placed) => {
    const { arc } = placed;
    const d = arcPath(placed);
    return (
      <g
        key={arc.id}
        id={`${idPrefix}${arc.id}`}
        role="option"
        tabIndex={-1}
        data-arc={arc.id}
        aria-selected={lit.has(arc.id)}
        aria-label={wordsOfArc(model, arc).replaceAll('\n', ', ')}
        className={classNames(
          'strip-arc',
          arc.role.replace(' ', '-'),
          arc.source === 'assumed' && 'assumed',
          lit.has(arc.id) && 'lit',
        )}
        onClick={() => onSelect(arc.id)}
        onDoubleClick={() => onOpen(arc.id)}
        onPointerEnter={(event) => onHover(arc.id, event.currentTarget.querySelector('text') ?? event.currentTarget)}
        onPointerLeave={() => onHover(undefined)}
      >
        <path className="hit" style={pathStyle(d)} />
        <path className="line" style={pathStyle(d)} />
        <ArcEnds placed={placed} />
        <ArcText placed={placed} lit={lit.has(arc.id)} />
      </g>
    );
  });
}

/** Small arrow at the end that the dimension runs to. */
function ArcEnds({ placed: { x2, y2 } }: { readonly placed: PlacedArc }) {
  return (
    <path className="arrow strip-glides" d="M-3 -8 L0 0 L3 -8" style={{ transform: `translate(${x2}px, ${y2}px)` }} />
  );
}

function ArcText({
  placed: { arc, x1, x2, y1, y2, height },
  lit,
}: {
  readonly placed: PlacedArc;
  readonly lit: boolean;
}) {
  const room = Math.abs(x2 - x1) - 16;
  const both = `${arc.name} ${arc.text}`;
  // As much as there is room for: name and value, the value alone, or nothing (it stands in the tip and the table).
  const label = lit || both.length * 6.2 < room ? both : arc.text.length * 7 < room ? arc.text : '';
  const at = { transform: `translate(${(x1 + x2) / 2}px, ${Math.min(y1, y2) - height - 4}px)` };
  return (
    <text className="strip-glides" textAnchor="middle" style={at}>
      {label}
    </text>
  );
}

/** Stations as ticks, their bands as shading, their names on levelled leaders. */
export function Ticks({ model, layout, lit, idPrefix, onSelect, onOpen, onHover }: MarksProps) {
  return layout.ticks.map(({ station, x, y, row, nameX, bandFrom, bandTo }) => {
    const nameAt = nameY(layout, row, model.groups);
    const wide = Math.max(bandTo - bandFrom, 0);
    return (
      <g
        key={station.id}
        id={`${idPrefix}${station.id}`}
        role="option"
        tabIndex={-1}
        data-station={station.id}
        aria-selected={lit.has(station.id)}
        aria-label={wordsOfStation(model, station).replaceAll('\n', ', ')}
        className={classNames(
          'strip-tick',
          station.datum && 'datum',
          station.form,
          lit.has(station.id) && 'lit',
          station.group > 0 && 'floats',
        )}
        onClick={() => onSelect(station.id)}
        onDoubleClick={() => onOpen(station.id)}
        onPointerEnter={(event) =>
          onHover(station.id, event.currentTarget.querySelector('.tick-name') ?? event.currentTarget)
        }
        onPointerLeave={() => onHover(undefined)}
      >
        {wide > 0.5 && (
          <rect
            className="band strip-glides"
            x={bandFrom - x}
            y={-11}
            width={wide}
            height={22}
            style={{ transform: `translate(${x}px, ${y}px)` }}
          />
        )}
        <g className="strip-glides" style={{ transform: `translate(${x}px, ${y}px)` }}>
          <rect className="hit" x={-6} y={-12} width={12} height={nameAt - y + 8} />
          <line className="tick" y1={-9} y2={12} />
          {station.datum && <path className="datum-mark" d="M-7 22 L7 22 L0 12 Z" />}
          <line className="leader" y1={station.datum ? 22 : 12} y2={nameAt - y - 12} />
        </g>
        <text className="tick-name strip-glides" style={{ transform: `translate(${nameX}px, ${nameAt}px)` }}>
          {station.name}
        </text>
      </g>
    );
  });
}

/** More notes than these would cover the drawing that they speak of. */
const NOTES_SHOWN = 2;

/** Contradictions in words, at the head of the strip: what does not close and by how much; those in hand first. */
export function ConflictNotes({
  model,
  lit,
  onSelect,
}: {
  readonly model: StripModel;
  readonly lit: ReadonlySet<string>;
  readonly onSelect: (id: RecordId, also: readonly RecordId[]) => void;
}) {
  if (model.conflicts.length === 0) return null;
  const inHand = (conflict: StripModel['conflicts'][number]) => conflict.dimensions.some((id) => lit.has(id));
  const ordered = model.conflicts.toSorted((a, b) => Number(inHand(b)) - Number(inHand(a)));
  const more = ordered.length - NOTES_SHOWN;
  return (
    <ul className="strip-conflicts" aria-label="Contradictions">
      {ordered.slice(0, NOTES_SHOWN).map(({ dimensions, closingError, suspects }) => {
        const [first, ...rest] = suspects.length === 1 ? [suspects[0]!.dimension, ...dimensions] : dimensions;
        if (first === undefined) return null;
        const [suspect] = suspects;
        return (
          <li key={dimensions.join()}>
            <button type="button" onClick={() => onSelect(first, rest)}>
              <SeverityMark severity="stop" />
              <span>
                does not close by <span className="figure">{closingError}</span>
                {suspect !== undefined && (
                  <>
                    {' · '}
                    {suspect.name} would be <span className="figure">{suspect.wouldBe}</span>
                  </>
                )}
              </span>
            </button>
          </li>
        );
      })}
      {more > 0 && <li className="strip-more">and {more} more among the findings</li>}
    </ul>
  );
}
