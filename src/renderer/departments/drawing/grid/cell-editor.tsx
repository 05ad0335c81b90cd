import { useEffect, useId, useLayoutEffect, useRef, useState } from 'react';
import type { Column, Offer, Under } from './column.ts';

interface CellEditorProps<R> {
  readonly column: Column<R>;
  readonly row: R | undefined;
  readonly start: string;
  /** Put the caret at the end instead of selecting all. */
  readonly caretAtEnd: boolean;
  /** A refusal of the last attempt, in words. */
  readonly refused: string | undefined;
  /** `isDoubtful`: something stands against the text. */
  readonly onDone: (text: string, then: 'down' | 'up' | 'right' | 'left' | 'stay', isDoubtful: boolean) => void;
  readonly onCancel: () => void;
}

/** Room for the table's scroll bar. */
const EDGE_PX = 14;

/** The field inside a cell. What the text comes to, or what is amiss with it, stands under it at every keystroke. */
export function CellEditor<R>({ column, row, start, caretAtEnd, refused, onDone, onCancel }: CellEditorProps<R>) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [text, setText] = useState(start);
  const [under, setUnder] = useState<Under>();
  const [offers, setOffers] = useState<readonly Offer[]>([]);
  const [chosen, setChosen] = useState(-1);
  const caret = useRef(start.length);
  const settled = useRef(false);
  const edit = column.edit;

  useLayoutEffect(() => {
    const field = input.current;
    field?.focus({ preventScroll: true });
    if (caretAtEnd) field?.setSelectionRange(start.length, start.length);
    else field?.select();
  }, [caretAtEnd, start]);
  // Near the foot of the table what stands under the cell would be cut off: it stands above then.
  const [above, setAbove] = useState(false);
  // A formula is longer than its column: the field grows with it as far as the table goes.
  const [most, setMost] = useState<number>();
  useLayoutEffect(() => {
    const cell = input.current?.getBoundingClientRect();
    const grid = input.current?.closest('.grid')?.getBoundingClientRect();
    if (cell === undefined || grid === undefined) return;
    setAbove(grid.bottom - cell.bottom < 120 && cell.top - grid.top > 120);
    setMost(Math.max(cell.width, grid.right - cell.left - EDGE_PX));
  }, []);
  // Answers overtake one another while someone types fast: only the latest counts.
  useEffect(() => {
    let latest = true;
    void edit?.preview?.(row, text).then((answer) => latest && setUnder(answer));
    void (edit?.offers?.(row, text, caret.current) ?? Promise.resolve([])).then((answer) => {
      if (!latest) return;
      setOffers(answer);
      setChosen(-1);
    });
    return () => {
      latest = false;
    };
  }, [edit, row, text]);
  // A refused text is written on: leaving counts again.
  useEffect(() => {
    if (refused !== undefined) settled.current = false;
  }, [refused]);

  const done = (then: 'down' | 'up' | 'right' | 'left' | 'stay', value = text) => {
    if (settled.current) return;
    settled.current = true;
    onDone(value, then, under?.problem !== undefined);
  };
  const take = (offer: Offer) => {
    const taken = edit?.take?.(text, caret.current, offer) ?? { text: offer.text, caret: offer.text.length };
    caret.current = taken.caret;
    setText(taken.text);
    setOffers([]);
    requestAnimationFrame(() => input.current?.setSelectionRange(taken.caret, taken.caret));
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    event.stopPropagation();
    const offer = offers[chosen];
    switch (event.key) {
      case 'Enter':
        event.preventDefault();
        if (offer !== undefined) take(offer);
        else done(event.shiftKey ? 'up' : 'down');
        return;
      case 'Tab':
        event.preventDefault();
        done(
          event.shiftKey ? 'left' : 'right',
          offer !== undefined ? (edit?.take?.(text, caret.current, offer).text ?? offer.text) : text,
        );
        return;
      case 'Escape':
        event.preventDefault();
        if (offers.length > 0 && chosen >= 0) return setChosen(-1);
        settled.current = true;
        return onCancel();
      case 'ArrowDown':
      case 'ArrowUp':
        if (offers.length === 0) return;
        event.preventDefault();
        setChosen((chosen + (event.key === 'ArrowDown' ? 1 : -1) + offers.length + 1) % (offers.length + 1));
    }
  };
  const combobox =
    offers.length === 0
      ? {}
      : {
          role: 'combobox',
          'aria-expanded': true,
          'aria-controls': `${id}o`,
          'aria-activedescendant': chosen >= 0 ? `${id}o${chosen}` : undefined,
        };
  const problem = refused !== undefined ? { sentence: refused, start: 0, end: 0 } : under?.problem;
  return (
    <div className="cell-editor">
      <input
        ref={input}
        className={problem === undefined ? 'cell-input' : 'cell-input wrong'}
        aria-label={column.title}
        aria-invalid={problem === undefined ? undefined : true}
        aria-describedby={`${id}u`}
        {...combobox}
        style={{ maxWidth: most }}
        spellCheck={false}
        autoComplete="off"
        value={text}
        onChange={(event) => {
          caret.current = event.target.selectionStart ?? event.target.value.length;
          setText(event.target.value);
        }}
        onSelect={(event) => {
          caret.current = event.currentTarget.selectionStart ?? caret.current;
        }}
        onKeyDown={onKeyDown}
        onBlur={() => done('stay')}
      />
      <div className={above ? 'cell-under above' : 'cell-under'} id={`${id}u`}>
        {problem !== undefined && (
          <div className="cell-problem" data-cell-problem>
            {problem.end > problem.start && <Marked text={text} start={problem.start} end={problem.end} />}
            <span>{problem.sentence}</span>
          </div>
        )}
        {problem === undefined && under?.shown !== undefined && (
          <div className="cell-shown figure" data-cell-shown>
            = {under.shown}
          </div>
        )}
        {offers.length > 0 && (
          <ul className="cell-offers" id={`${id}o`} role="listbox" aria-label="Names">
            {offers.map((offer, i) => (
              <li
                key={offer.text}
                id={`${id}o${i}`}
                role="option"
                aria-selected={i === chosen}
                tabIndex={-1}
                onPointerDown={(event) => {
                  event.preventDefault();
                  take(offer);
                }}
              >
                <span className="ellipsis grow">{offer.text}</span>
                <span className="figure soft">{offer.beside}</span>
              </li>
            ))}
          </ul>
        )}
      </div>
    </div>
  );
}

/** The text with the place of the trouble underlined. */
function Marked({ text, start, end }: { readonly text: string; readonly start: number; readonly end: number }) {
  return (
    <span className="figure cell-marked">
      {text.slice(0, start)}
      <u>{text.slice(start, end)}</u>
      {text.slice(end)}
    </span>
  );
}

interface ChoiceEditorProps {
  readonly title: string;
  readonly choices: readonly string[];
  readonly start: string;
  readonly onDone: (text: string, then: 'down' | 'right' | 'left' | 'stay') => void;
  readonly onCancel: () => void;
}

/** A cell whose words are a closed list. */
export function ChoiceEditor({ title, choices, start, onDone, onCancel }: ChoiceEditorProps) {
  const field = useRef<HTMLSelectElement>(null);
  const settled = useRef(false);
  const [value, setValue] = useState(start);
  useLayoutEffect(() => field.current?.focus({ preventScroll: true }), []);
  const done = (then: 'down' | 'right' | 'left' | 'stay', text = value) => {
    if (settled.current) return;
    settled.current = true;
    onDone(text, then);
  };
  return (
    <div className="cell-editor">
      <select
        ref={field}
        className="cell-input"
        aria-label={title}
        value={value}
        onChange={(event) => setValue(event.target.value)}
        onBlur={() => done('stay')}
        onKeyDown={(event) => {
          event.stopPropagation();
          if (event.key === 'Enter') done('down');
          else if (event.key === 'Tab') done(event.shiftKey ? 'left' : 'right');
          else if (event.key === 'Escape') {
            settled.current = true;
            onCancel();
          } else return;
          event.preventDefault();
        }}
      >
        {choices.map((choice) => (
          <option key={choice}>{choice}</option>
        ))}
      </select>
    </div>
  );
}
