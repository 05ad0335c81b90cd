import { type ReactNode, useRef, useState } from 'react';
import { classNames } from './class-names.ts';
import { readKept, writeKept } from './kept.ts';

interface SplitProps {
  /** Under which the size is kept from one day to the next. */
  readonly id: string;
  /** `across`: side by side; `down`: one over the other. */
  readonly direction: 'across' | 'down';
  /** Which of the two has the size; the other takes the rest. */
  readonly sized: 'first' | 'second';
  /** Says what the separator moves, e.g. "Width of the parts list". */
  readonly label: string;
  readonly initial: number;
  readonly min: number;
  readonly max: number;
  readonly children: readonly [ReactNode, ReactNode];
}

const STEP_PX = 16;

/** Two panes with a separator that moves by pointer and by keys, and remembers its place. */
export function Split({ id, direction, sized, label, initial, min, max, children }: SplitProps) {
  const keep = `split:${id}`;
  const [size, setSize] = useState(() => Number(readKept(keep) ?? initial) || initial);
  const [dragged, setDragged] = useState(false);
  const root = useRef<HTMLDivElement>(null);
  const clamp = (px: number) => Math.round(Math.min(max, Math.max(min, px)));
  const change = (px: number) => {
    setSize(clamp(px));
    writeKept(keep, String(clamp(px)));
  };
  const fromPointer = (event: React.PointerEvent) => {
    const box = root.current?.getBoundingClientRect();
    if (box === undefined) return;
    const [at, start, end] =
      direction === 'across' ? [event.clientX, box.left, box.right] : [event.clientY, box.top, box.bottom];
    change(Math.min(sized === 'first' ? at - start : end - at, end - start - 120));
  };
  const [grow, shrink] = direction === 'across' ? ['ArrowRight', 'ArrowLeft'] : ['ArrowDown', 'ArrowUp'];
  const onKeyDown = (event: React.KeyboardEvent) => {
    const sign = sized === 'first' ? 1 : -1;
    if (event.key === grow) change(size + sign * STEP_PX);
    else if (event.key === shrink) change(size - sign * STEP_PX);
    else if (event.key === 'Home') change(min);
    else if (event.key === 'End') change(max);
    else if (event.key === 'Enter') change(initial);
    else return;
    event.preventDefault();
  };
  const box = direction === 'across' ? { width: size } : { height: size };
  const pane = (which: 'first' | 'second', content: ReactNode) => (
    <div className={`${which} ${which === sized ? 'sized' : 'rest'}`} style={which === sized ? box : undefined}>
      {content}
    </div>
  );
  return (
    <div ref={root} className={`split ${direction}`}>
      {pane('first', children[0])}
      <div
        className={classNames('separator', dragged && 'dragged')}
        role="separator"
        tabIndex={0}
        aria-label={label}
        aria-orientation={direction === 'across' ? 'vertical' : 'horizontal'}
        aria-valuenow={size}
        aria-valuemin={min}
        aria-valuemax={max}
        onKeyDown={onKeyDown}
        onDoubleClick={() => change(initial)}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          setDragged(true);
        }}
        onPointerMove={(event) => dragged && fromPointer(event)}
        onPointerUp={() => setDragged(false)}
        onPointerCancel={() => setDragged(false)}
      />
      {pane('second', children[1])}
    </div>
  );
}
