import { useEffect, useMemo, useState } from 'react';
import type { Part } from '../../shared/build/part.ts';
import { useEngine, useIsEditable, useView } from '../engine/use-engine.ts';
import type { MaterialLine } from '../engine/views/materials.ts';
import { Button } from '../kit/button.tsx';
import { ComboField } from '../kit/combo-field.tsx';
import { figureWords } from './figures.ts';
import { giveFigures, lineNamed } from './lines.ts';
import { openMaterials } from './wanted.ts';

interface MaterialFieldProps {
  readonly part: Part;
  readonly error: string | undefined;
  readonly onSettle: (material: string) => void;
}

const none: readonly MaterialLine[] = [];

/** What a part is made of: any name, offered from the build's own materials and the table, with what is known of it. */
export function MaterialField({ part, error, onSettle }: MaterialFieldProps) {
  const engine = useEngine();
  const editable = useIsEditable();
  const lines = useView('materials', null);
  const [text, setText] = useState(part.material);
  useEffect(() => setText(part.material), [part.material]);
  const options = useMemo(
    () => (lines ?? none).filter(({ isBehind }) => !isBehind).map((line) => optionOf(line)),
    [lines],
  );
  const line = lines && lineNamed(lines, text);
  const isAsked = lines !== undefined && text.trim() !== '' && line?.known.densityKgM3 === undefined;
  const settle = (material: string) => {
    if (material !== part.material || error !== undefined) onSettle(material);
  };
  return (
    <div className="material-field">
      <ComboField
        label="Material"
        value={text}
        options={options}
        placeholder="Name it, or choose from the list"
        hint={lines === undefined ? '' : meaningOf(part, text.trim(), line)}
        wraps
        error={error}
        readOnly={!editable}
        onChange={setText}
        settling={{ kept: part.material, onSettle: settle }}
      />
      <div className="material-acts">
        {editable && isAsked && (
          <Button onClick={() => void giveFigures(engine, lines, text)}>Give Its Figures…</Button>
        )}
        <Button look="quiet" onClick={() => openMaterials(line?.key)}>
          Materials…
        </Button>
      </div>
    </div>
  );
}

function optionOf({ own, name, also, known }: MaterialLine) {
  const density = figureWords(known, 'densityKgM3') ?? 'no density';
  return { text: name, aside: own === undefined ? density : `own, ${density}`, also };
}

function meaningOf({ make, name: part }: Part, name: string, line: MaterialLine | undefined): string {
  if (name === '') {
    if (make === 'bought') return 'A bought part needs none.';
    return `Nothing says what ${part} is ${make === 'cast' ? 'cast in' : 'cut from'}. Any name will do.`;
  }
  if (line === undefined) return `Nothing is known of ${name}, so ${part} has no mass.`;
  const density = figureWords(line.known, 'densityKgM3');
  if (density === undefined) return `The density of ${line.name} is not known, so ${part} has no mass.`;
  const as = line.name.toLowerCase() === name.toLowerCase() ? '' : `Taken as ${line.name}: `;
  const own = line.own === undefined ? '' : 'the build’s own row';
  const source = [own, line.source].filter(Boolean).join(', ');
  return `${as}${density}. Source: ${source}.`;
}
