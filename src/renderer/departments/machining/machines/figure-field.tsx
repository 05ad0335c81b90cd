import { useEffect, useId, useRef, useState } from 'react';
import type { Machine } from '../../../../shared/build/machine.ts';
import { readFigures } from '../../../../shared/plan/machine-figures-read.ts';
import type { LengthUnit } from '../../../../shared/quantity/kind.ts';
import type { MachineFigure } from '../../../../shared/tables/machine-figures.ts';
import { showFigure } from '../../../engine/machining/show-figure.ts';
import { CautionIcon, StopIcon } from '../../../kit/icons.tsx';

interface FigureFieldProps {
  readonly figure: MachineFigure;
  readonly machine: Machine;
  /** What it contradicts among the others. */
  readonly doubt: string | undefined;
  readonly unit: LengthUnit;
  readonly refused: string | undefined;
  readonly readOnly: boolean;
  /** It is asked for from elsewhere: it takes the focus once. */
  readonly wanted: boolean;
  readonly onSettle: (text: string) => void;
}

/** One figure of a machine: as written, what it comes to beside it, and what is wrong with it as one types. */
export function FigureField({ figure, machine, doubt, unit, refused, readOnly, wanted, onSettle }: FigureFieldProps) {
  const id = useId();
  const written = machine.figures[figure.key] ?? '';
  const input = useRef<HTMLInputElement>(null);
  const [draft, setDraft] = useState(written);
  useEffect(() => setDraft(written), [written]);
  useEffect(() => {
    if (wanted) input.current?.focus();
  }, [wanted]);
  const { values, problems } = readFigures({ ...machine, figures: { [figure.key]: draft }, bed: [] }, unit);
  const value = values.get(figure.key);
  const problem = problems[0]?.problem;
  const error = problem ?? (draft === written ? undefined : refused);
  const settle = () => {
    if (draft.trim() !== written && problem === undefined) onSettle(draft.trim());
  };
  const words = problem !== undefined ? '' : value === undefined ? 'not known' : showFigure(figure, value, unit);
  return (
    <div className="figure-field" data-figure={figure.key}>
      <label htmlFor={id}>
        <span className="figure-label">{figure.label}</span>
        <span className="figure-help">{figure.help}</span>
      </label>
      <div className="figure-entry">
        <input
          ref={input}
          id={id}
          className="input figure"
          value={draft}
          readOnly={readOnly}
          spellCheck={false}
          autoComplete="off"
          placeholder="not known"
          aria-invalid={error === undefined ? undefined : true}
          aria-describedby={error === undefined ? `${id}v` : `${id}e`}
          onChange={(event) => setDraft(event.target.value)}
          onBlur={settle}
          onKeyDown={(event) => {
            if (event.key === 'Enter') settle();
            else if (event.key === 'Escape' && draft !== written) {
              event.stopPropagation();
              setDraft(written);
            }
          }}
        />
        <output id={`${id}v`} className={value === undefined ? 'soft' : 'figure'}>
          {words}
        </output>
        {error === undefined && doubt !== undefined && draft === written && (
          <p className="figure-error caution">
            <CautionIcon />
            {doubt}
          </p>
        )}
        {error !== undefined && (
          <p id={`${id}e`} className="figure-error">
            <StopIcon />
            {error}
          </p>
        )}
      </div>
    </div>
  );
}
