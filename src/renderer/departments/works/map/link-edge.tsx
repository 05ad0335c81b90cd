import type { EdgeProps } from '@xyflow/react';
import { memo } from 'react';
import { classNames } from '../../../kit/class-names.ts';
import { type LinkEdge, labelOf } from './graph.ts';

/** A line from the part whose dimensions are named to the part that names them, with how many and which. */
export const LinkLine = memo(({ data }: EdgeProps<LinkEdge>) => {
  if (data === undefined) return null;
  const { link, pairs, path, label, look, near } = data;
  const broken = pairs.some(({ dimension }) => dimension === undefined);
  const grave = link.marks.stop > 0 ? 'stop' : link.marks.caution > 0 ? 'caution' : undefined;
  const text = labelOf(link);
  const half = text.length * 3.05 + 5;
  return (
    <g className={classNames('link', look, near && 'near', broken && 'broken', label !== undefined && grave)}>
      <path className="link-reach" d={path} />
      <path className="link-line" d={path} markerEnd="url(#works-arrow)" />
      {label !== undefined && (
        <g className="link-label" transform={`translate(${label.x} ${label.y})`}>
          <rect x={-half} y={-9} width={half * 2} height={18} />
          <text textAnchor="middle" dy="4">
            {text}
          </text>
          {grave !== undefined && <LinkMark severity={grave} />}
        </g>
      )}
    </g>
  );
});

/** The severity's shape over a label: what there is in full stands in the line's tip. */
function LinkMark({ severity }: { readonly severity: 'stop' | 'caution' }) {
  return (
    <g className={`link-mark ${severity}`} transform="translate(-7 -23) scale(0.875)">
      <rect className="link-mark-ground" x="-1" y="-1" width="18" height="18" />
      {severity === 'stop' ? (
        <>
          <path className="filled" d="M5.2 1.5h5.6l3.7 3.7v5.6l-3.7 3.7H5.2l-3.7-3.7V5.2z" />
          <path className="bar" d="M4.8 8h6.4" />
        </>
      ) : (
        <path d="M8 2 14.5 14h-13zM8 6.5v3.2M8 11.8v.2" />
      )}
    </g>
  );
}

/** The arrowhead that all lines end in; it takes the line's colour. Stands once on the map. */
export const ArrowHead = () => (
  <svg className="works-defs" aria-hidden="true">
    <defs>
      <marker
        id="works-arrow"
        viewBox="0 0 10 10"
        refX="9.5"
        refY="5"
        markerWidth="9"
        markerHeight="9"
        markerUnits="userSpaceOnUse"
        orient="auto"
      >
        <path d="M0.5 1.2 9.5 5 0.5 8.8z" fill="context-stroke" />
      </marker>
    </defs>
  </svg>
);
