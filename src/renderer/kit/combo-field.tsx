import './combo-field.css';
import { useId, useLayoutEffect, useRef, useState } from 'react';
import { classNames } from './class-names.ts';
import { StopIcon } from './icons.tsx';

export interface ComboOption {
  /** What is put into the field. */
  readonly text: string;
  /** Shown beside it: where it stands, how large it is. */
  readonly aside: string;
  /** Found by these too. */
  readonly also?: readonly string[];
}

interface ComboFieldProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly ComboOption[];
  readonly placeholder: string;
  /** What the text means, in words. */
  readonly hint: string;
  readonly error?: string | undefined;
  readonly onChange: (text: string) => void;
  /** For a field that is handed on only when the writer is done with it; Esc takes the typing back. */
  readonly settling?: Settling;
  readonly readOnly?: boolean;
  /** What the text means may take several lines. */
  readonly wraps?: boolean;
}

interface Settling {
  /** What is kept now. */
  readonly kept: string;
  /** Called on choosing, on Enter and on leaving, when the text differs or was refused. */
  readonly onSettle: (text: string) => void;
}

const SHOWN = 40;

/** A line of text with the names that it may hold. What is typed need not be one of them. */
export function ComboField(props: ComboFieldProps) {
  const { label, value, options, placeholder, hint, error, onChange, settling, readOnly = false, wraps } = props;
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [open, setOpen] = useState(false);
  const [active, setActive] = useState(-1);
  const typed = value.trim().toLocaleLowerCase('en');
  const exact = options.some(({ text }) => text.toLocaleLowerCase('en') === typed);
  // A name that is chosen already does not hide the others.
  const shown = (exact ? options : options.filter((option) => holds(option, typed))).slice(0, SHOWN);
  const isOpen = open && !readOnly && shown.length > 0;
  const settle = (text: string) => {
    if (!readOnly && (text !== settling?.kept || error !== undefined)) settling?.onSettle(text);
  };
  const take = (option: ComboOption) => {
    onChange(option.text);
    settle(option.text);
    setOpen(false);
    setActive(-1);
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    switch (event.key) {
      case 'ArrowDown':
      case 'ArrowUp': {
        if (!isOpen) setActive(event.key === 'ArrowDown' ? 0 : shown.length - 1);
        else setActive((active + (event.key === 'ArrowDown' ? 1 : -1) + shown.length + 1) % (shown.length + 1));
        setOpen(true);
        break;
      }
      case 'Enter': {
        const option = isOpen ? shown[active] : undefined;
        if (option === undefined) {
          setOpen(false);
          return settle(value);
        }
        take(option);
        break;
      }
      case 'Escape':
        if (isOpen) setOpen(false);
        else if (settling !== undefined && value !== settling.kept) onChange(settling.kept);
        else return;
        event.stopPropagation();
        break;
      default:
        return;
    }
    event.preventDefault();
  };
  return (
    <div className="field combo">
      <label htmlFor={id} className="lettering">
        {label}
      </label>
      <input
        ref={input}
        id={id}
        className="input figure"
        role="combobox"
        autoComplete="off"
        spellCheck={false}
        aria-expanded={isOpen}
        aria-controls={isOpen ? `${id}list` : undefined}
        aria-activedescendant={isOpen && shown[active] !== undefined ? `${id}o${active}` : undefined}
        aria-autocomplete="list"
        aria-describedby={`${id}h`}
        aria-invalid={error === undefined ? undefined : true}
        value={value}
        placeholder={placeholder}
        readOnly={readOnly}
        onChange={(event) => {
          onChange(event.target.value);
          setOpen(true);
          setActive(-1);
        }}
        onPointerDown={() => setOpen(true)}
        onBlur={() => {
          setOpen(false);
          settle(value);
        }}
        onKeyDown={onKeyDown}
      />
      <div
        id={`${id}h`}
        className={error === undefined ? classNames('hint', wraps !== true && 'ellipsis') : 'error'}
        title={error ?? hint}
      >
        {error !== undefined && <StopIcon />}
        {error ?? hint}
      </div>
      {isOpen && (
        <Options anchor={input} id={`${id}list`} label={label}>
          {shown.map((option, i) => (
            <li
              key={option.text}
              id={`${id}o${i}`}
              role="option"
              aria-selected={i === active}
              className="list-row"
              ref={i === active ? (element) => element?.scrollIntoView({ block: 'nearest' }) : undefined}
              onPointerDown={(event) => event.preventDefault()}
              onClick={() => take(option)}
            >
              <span className="grow ellipsis">{option.text}</span>
              <span className="figure soft">{option.aside}</span>
            </li>
          ))}
        </Options>
      )}
    </div>
  );
}

const holds = ({ text, aside, also = [] }: ComboOption, typed: string): boolean =>
  [text, ...also].some((name) => name.toLocaleLowerCase('en').includes(typed)) || aside.startsWith(typed);

interface OptionsProps {
  readonly anchor: React.RefObject<HTMLElement | null>;
  readonly id: string;
  readonly label: string;
  readonly children: React.ReactNode;
}

const MOST_PX = 240;

/** The list over everything else, below its field or above it. */
function Options({ anchor, id, label, children }: OptionsProps) {
  const list = useRef<HTMLUListElement>(null);
  const [at, setAt] = useState<{ left: number; top: number; width: number; maxHeight: number }>();
  useLayoutEffect(() => {
    const rect = anchor.current?.getBoundingClientRect();
    if (rect === undefined) return;
    list.current?.showPopover?.();
    const below = window.innerHeight - rect.bottom - 8;
    const height = Math.min(MOST_PX, list.current?.scrollHeight ?? MOST_PX);
    const over = below < height && rect.top > below;
    const maxHeight = Math.min(MOST_PX, over ? rect.top - 8 : below);
    setAt({
      left: rect.left,
      top: over ? rect.top - Math.min(height, maxHeight) - 2 : rect.bottom + 2,
      width: Math.max(rect.width, 220),
      maxHeight,
    });
  }, [anchor]);
  return (
    <ul ref={list} id={id} popover="manual" role="listbox" aria-label={label} className="combo-list" style={at}>
      {children}
    </ul>
  );
}
