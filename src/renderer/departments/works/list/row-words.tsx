import { DownIcon, RightIcon } from '../../../kit/icons.tsx';
import { GateMark, SeverityMark } from '../../../kit/marks.tsx';
import { PartMarks } from '../map/part-node.tsx';
import type { ListRow } from './rows.ts';

const partsWord = (count: number): string => `${count} ${count === 1 ? 'part' : 'parts'}`;

/** What one row of the tree says. */
export function RowWords({ row }: { readonly row: ListRow }) {
  const { shows, expanded } = row;
  const fold = (
    <span className="works-fold">{expanded === undefined ? null : expanded ? <DownIcon /> : <RightIcon />}</span>
  );
  switch (shows.kind) {
    case 'part': {
      const { name, number, make, material, quantity, gates, counts } = shows.line;
      return (
        <>
          {fold}
          <span className="works-row-name ellipsis">{name}</span>
          <span className="figure soft ellipsis">{number === '' ? 'no number' : number}</span>
          <span className="soft ellipsis grow">
            {make}, {material === '' ? 'no material' : material}, × {quantity}
          </span>
          <span className="soft">
            feeds {partsWord(shows.feeds)}, hangs on {partsWord(shows.hangsOn)}
          </span>
          <PartMarks counts={counts} />
          <span className="works-row-gate">
            {gates[0] !== undefined && <GateMark gate={gates[0].gate} state={gates[0].state} word />}
          </span>
        </>
      );
    }
    case 'link':
      return (
        <>
          {fold}
          <span className="lettering soft works-row-way">{shows.way}</span>
          <span className="works-row-name">{shows.name}</span>
          <span className="soft ellipsis grow">{shows.words}</span>
          {shows.findings !== undefined && <span className="works-row-findings">{shows.findings}</span>}
        </>
      );
    case 'group':
      return (
        <>
          {fold}
          <span className="lettering">{shows.title}</span>
          <span className="figure soft">{shows.count}</span>
        </>
      );
    case 'line':
      return (
        <>
          {fold}
          <span className="lettering soft works-row-way">{shows.is}</span>
          <span className="ellipsis grow">{shows.name}</span>
          {shows.mark !== undefined && <SeverityMark severity={shows.mark} />}
          <span className="soft">{shows.note}</span>
          <span className="figure works-row-value">{shows.value}</span>
        </>
      );
    case 'tied':
      return (
        <>
          {fold}
          <span className="lettering soft works-row-way">{shows.way}</span>
          <span className="ellipsis">{shows.name}</span>
        </>
      );
  }
}
