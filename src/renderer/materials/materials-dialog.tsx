import './materials.css';
import { Fragment, useEffect, useMemo, useRef, useState } from 'react';
import { nameKey } from '../../shared/formula/name-key.ts';
import { useEngine, useFile, useIsEditable, useView } from '../engine/use-engine.ts';
import type { MaterialLine } from '../engine/views/materials.ts';
import { announce } from '../kit/announcer.tsx';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { StopIcon } from '../kit/icons.tsx';
import { addMaterial, lineNamed } from './lines.ts';
import { OwnDetail, TableDetail } from './material-detail.tsx';
import { MaterialsTable } from './materials-table.tsx';
import { closeMaterials, useWantedMaterials, type WantedMaterials } from './wanted.ts';
import { removedWords } from './words.ts';

/** The materials, while someone wants them. */
export function Materials() {
  const wanted = useWantedMaterials();
  // Another build would not know what was wanted.
  useEffect(() => closeMaterials, []);
  return wanted === undefined ? null : <MaterialsDialog wanted={wanted} />;
}

const none: readonly MaterialLine[] = [];

interface Said {
  readonly sentence: string;
  readonly isRefusal: boolean;
  /** The step that can be taken back from here while it is the last one. */
  readonly step?: string;
}

/** Materials of the build's own, to be written, and those of the table, to be read and copied. */
function MaterialsDialog({ wanted }: { readonly wanted: WantedMaterials }) {
  const engine = useEngine();
  const editable = useIsEditable();
  const file = useFile();
  const lines = useView('materials', null) ?? none;
  const [open, setOpen] = useState(wanted.row);
  const [filter, setFilter] = useState('');
  const [said, setSaid] = useState<Said>();
  const [goal, setGoal] = useState<WantedMaterials | undefined>(wanted.row === undefined ? undefined : wanted);
  const body = useRef<HTMLDivElement>(null);
  const shown = useMemo(() => filtered(lines, filter, open), [lines, filter, open]);

  // The place to write in comes with the next model, so it is looked for until it is there.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the rows are what the goal is looked for in
  useEffect(() => {
    if (goal?.row === undefined) return;
    const row = `[data-row="${CSS.escape(goal.row)}"]`;
    const place = goal.field === undefined ? row : `${row} ~ tr [data-field="${goal.field}"]`;
    const element = body.current?.querySelector<HTMLElement>(goal.field === undefined ? `${row} button` : place);
    if (element == null) return;
    setGoal(undefined);
    element.closest('tbody')?.scrollIntoView({ block: 'nearest' });
    element.focus();
    if (element instanceof HTMLInputElement) element.select();
  }, [goal, shown]);

  const tell = (sentence: string, more: Partial<Said> = {}) => {
    announce(sentence);
    setSaid({ sentence, isRefusal: false, ...more });
  };
  const add = async (from?: MaterialLine) => {
    const { outcome, row } = await addMaterial(engine, lines, from);
    if (!outcome.ok) return tell(outcome.sentence, { isRefusal: true });
    setSaid(undefined);
    setFilter('');
    setOpen(row);
    setGoal({ row, field: from === undefined ? 'name' : 'densityKgM3' });
  };
  const remove = async (line: MaterialLine) => {
    if (line.own === undefined) return;
    const next = shown[shown.indexOf(line) + 1] ?? shown[shown.indexOf(line) - 1];
    const outcome = await engine.run('material-remove', { material: line.own });
    if (!outcome.ok) return tell(outcome.sentence, { isRefusal: true });
    const table = lines.filter(({ own }) => own === undefined);
    tell(removedWords(line.name, line.usedBy, lineNamed(table, line.name) !== undefined), { step: outcome.label });
    setGoal({ row: next?.key, field: undefined });
  };
  const takeBack = async () => {
    const outcome = await engine.step('undo');
    if (outcome.ok) setSaid(undefined);
    else tell(outcome.sentence, { isRefusal: true });
  };
  return (
    <Dialog title="Materials" wide onClose={closeMaterials} actions={<Button onClick={closeMaterials}>Done</Button>}>
      <div ref={body} className="materials">
        <div className="materials-head">
          <input
            type="search"
            className="input"
            aria-label="Filter the materials"
            placeholder="Filter"
            value={filter}
            onChange={(event) => setFilter(event.target.value)}
          />
          {editable && <Button onClick={() => void add()}>Add a Material</Button>}
        </div>
        {said !== undefined && (
          <p className={said.isRefusal ? 'materials-said refused' : 'materials-said'}>
            {said.isRefusal && <StopIcon />}
            <span className="grow">{said.sentence}</span>
            {said.step !== undefined && editable && file.is === 'open' && file.undo === said.step && (
              <Button onClick={() => void takeBack()}>Undo</Button>
            )}
          </p>
        )}
        <MaterialsTable
          lines={shown}
          open={open}
          onToggle={(key) => setOpen(key === open ? undefined : key)}
          detailOf={(line) => (
            <Fragment key={line.key}>
              {line.own === undefined ? (
                <TableDetail line={line} editable={editable} onCopy={() => void add(line)} />
              ) : (
                <OwnDetail line={line} editable={editable} onRemove={() => void remove(line)} />
              )}
            </Fragment>
          )}
        />
        {lines.length > 0 && shown.length === 0 && <p className="soft">No material matches "{filter}".</p>}
      </div>
    </Dialog>
  );
}

/** Lines that hold every word of the filter; the open one stays, so that what is being written does not vanish. */
function filtered(lines: readonly MaterialLine[], filter: string, open: string | undefined): readonly MaterialLine[] {
  const words = nameKey(filter).split(' ').filter(Boolean);
  if (words.length === 0) return lines;
  return lines.filter(({ key, name, also, source }) => {
    const text = nameKey([name, ...also, source].join(' '));
    return key === open || words.every((word) => text.includes(word));
  });
}
