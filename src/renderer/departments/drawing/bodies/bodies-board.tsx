import { type ReactNode, useCallback, useState } from 'react';
import type { BodyId } from '../../../../shared/base/ids.ts';
import type { ShapeType } from '../../../../shared/build/body.ts';
import type { BodyPreview } from '../../../engine/asks/body-preview.ts';
import { useView } from '../../../engine/use-engine.ts';
import type { BodyRow } from '../../../engine/views/bodies.ts';
import type { PartSheet } from '../../../engine/views/part.ts';
import { Pane } from '../../../kit/pane.tsx';
import { Split } from '../../../kit/split.tsx';
import { BodiesList } from './bodies-list.tsx';
import { type BodyForm, formOfBody, newForm } from './body-form.ts';
import { BodyFormPane } from './body-form-pane.tsx';
import { SolidPane } from './solid-pane.tsx';

interface BodiesBoardProps {
  readonly sheet: PartSheet;
  readonly tabs: ReactNode;
}

interface Opened {
  /** Undefined: a new body. */
  readonly body: BodyId | undefined;
  readonly form: BodyForm;
}

/** The list of bodies, or the form of one, over the solid that they make. */
export function BodiesBoard({ sheet, tabs }: BodiesBoardProps) {
  const part = sheet.part.id;
  const rows = useView('bodies', { part });
  const [opened, setOpened] = useState<Opened>();
  const [preview, setPreview] = useState<BodyPreview>();
  const body = opened?.body === undefined ? undefined : rows?.find(({ record }) => record.id === opened.body)?.record;
  // A body that is removed meanwhile (undo) takes its form with it.
  const form = opened !== undefined && (opened.body === undefined || body !== undefined) ? opened.form : undefined;
  const close = useCallback(() => setOpened(undefined), []);
  return (
    <Split id="solid" direction="down" sized="second" label="Height of the solid" initial={320} min={160} max={900}>
      <Pane title={sheet.part.name} beside={tabs}>
        <div id="part-table" role="tabpanel" aria-label="bodies" className="board-table">
          {form !== undefined ? (
            <BodyFormPane
              key={opened?.body ?? 'new'}
              sheet={sheet}
              body={body}
              start={form}
              onPreview={setPreview}
              onDone={close}
            />
          ) : (
            rows !== undefined && (
              <BodiesList
                rows={rows}
                onNew={(type: ShapeType) => setOpened({ body: undefined, form: newForm(type) })}
                onOpen={(row: BodyRow) => setOpened({ body: row.record.id, form: formOfBody(row.record, row.fields) })}
              />
            )
          )}
        </div>
      </Pane>
      <SolidPane part={part} name={sheet.part.name} ghost={form === undefined ? undefined : preview?.ghost} />
    </Split>
  );
}
