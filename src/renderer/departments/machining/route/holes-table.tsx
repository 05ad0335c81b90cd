import { useState } from 'react';
import type { PartId } from '../../../../shared/base/ids.ts';
import type { HoleRow } from '../../../engine/machining/route-models.ts';
import { useView } from '../../../engine/use-engine.ts';
import { Button } from '../../../kit/button.tsx';
import { Empty } from '../../../kit/empty.tsx';
import { goToUnknown } from '../setups/verdict-list.tsx';

/** Holes by size with the drills that make them: of the part, or of the whole build. */
export function HolesTable({ part, name }: { readonly part: PartId; readonly name: string }) {
  const model = useView('holes', { part });
  const [whole, setWhole] = useState(false);
  if (model === undefined) return <p className="findings-wait soft">The holes are being counted…</p>;
  const rows = whole ? model.ofBuild : model.ofPart;
  return (
    <div className="holes">
      <fieldset className="swing-looks holes-of">
        <legend className="unseen">Of</legend>
        <Button look="quiet" pressed={!whole} onClick={() => setWhole(false)}>
          {name}
        </Button>
        <Button look="quiet" pressed={whole} onClick={() => setWhole(true)}>
          The whole build
        </Button>
      </fieldset>
      {!whole && model.unknown.length > 0 && (
        <ul className="verdict-missing">
          {model.unknown.map(({ sentence, go }) => (
            <li key={sentence}>
              <button type="button" className="verdict-link" onClick={() => goToUnknown(go)}>
                {sentence}
              </button>
            </li>
          ))}
        </ul>
      )}
      {rows.length === 0 ? (
        <Empty title="No holes">
          <p>Holes drawn as bodies of this part are listed here by size, with their drills.</p>
        </Empty>
      ) : (
        <Table rows={rows} whole={whole} />
      )}
    </div>
  );
}

function Table({ rows, whole }: { readonly rows: readonly HoleRow[]; readonly whole: boolean }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it is scrolled by keys
    <div className="holes-scroll" tabIndex={0} role="region" aria-label="Hole schedule" data-pane-entry>
      <table className="holes-table">
        <thead>
          <tr className="lettering soft">
            <th scope="col">Size</th>
            <th scope="col">Count</th>
            {!whole && <th scope="col">Depth</th>}
            <th scope="col">How</th>
            <th scope="col">Or</th>
            <th scope="col">Besides</th>
            <th scope="col">{whole ? 'Parts' : 'Bodies'}</th>
            <th scope="col">Source</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key}>
              <th scope="row" className="figure">
                {row.size}
              </th>
              <td className="figure">{row.count}</td>
              {!whole && <td className="figure">{row.depth}</td>}
              <td>{row.opened}</td>
              <td className="soft">{row.instead}</td>
              <td>{row.more}</td>
              <td>{row.where}</td>
              <td className="soft">{row.source}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
