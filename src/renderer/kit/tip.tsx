import {
  cloneElement,
  type ReactElement,
  type ReactNode,
  useEffect,
  useId,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { createPortal } from 'react-dom';

type Trigger = ReactElement<Record<string, unknown>>;

interface TipProps {
  readonly text: ReactNode;
  /** False when the text only repeats the control's name. */
  readonly describes?: boolean;
  readonly children: Trigger;
}

const SHOW_AFTER_MS = 450;
const HIDE_AFTER_MS = 150;

/**
 * A tip on hover and on keyboard focus. It stays while the pointer is on it and goes with Esc. The child is cloned: it
 * must pass on event handlers to its element.
 */
export function Tip({ text, describes = true, children }: TipProps) {
  const id = useId();
  const [anchor, setAnchor] = useState<DOMRect>();
  const timer = useRef(0);
  const later = (ms: number, run: () => void) => {
    window.clearTimeout(timer.current);
    timer.current = window.setTimeout(run, ms);
  };
  const hide = () => setAnchor(undefined);
  useEffect(() => () => window.clearTimeout(timer.current), []);
  useEffect(() => {
    if (anchor === undefined) return;
    const onKey = (event: KeyboardEvent) => event.key === 'Escape' && setAnchor(undefined);
    window.addEventListener('keydown', onKey, { capture: true });
    return () => window.removeEventListener('keydown', onKey, { capture: true });
  }, [anchor]);

  const both =
    (name: string, run: (event: { currentTarget: Element }) => void) => (event: { currentTarget: Element }) => {
      (children.props[name] as ((event: unknown) => void) | undefined)?.(event);
      run(event);
    };
  const show = (event: { currentTarget: Element }) => {
    const element = event.currentTarget;
    later(SHOW_AFTER_MS, () => element.isConnected && setAnchor(element.getBoundingClientRect()));
  };
  return (
    <>
      {cloneElement(children, {
        'aria-describedby': describes && anchor !== undefined ? id : children.props['aria-describedby'],
        onPointerEnter: both('onPointerEnter', show),
        onPointerLeave: both('onPointerLeave', () => later(HIDE_AFTER_MS, hide)),
        onPointerDown: both('onPointerDown', () => later(0, hide)),
        onFocus: both('onFocus', (event) => event.currentTarget.matches(':focus-visible') && show(event)),
        onBlur: both('onBlur', () => later(0, hide)),
      })}
      {anchor !== undefined && (
        <TipBox
          id={id}
          anchor={anchor}
          stay={() => window.clearTimeout(timer.current)}
          leave={() => later(HIDE_AFTER_MS, hide)}
        >
          {text}
        </TipBox>
      )}
    </>
  );
}

interface TipBoxProps {
  readonly id: string;
  readonly anchor: { readonly left: number; readonly top: number; readonly bottom: number };
  readonly stay?: () => void;
  readonly leave?: () => void;
  readonly children: ReactNode;
}

/** The box alone, for drawings that decide themselves when to show it. Keeps inside the window. */
export function TipBox({ id, anchor, stay, leave, children }: TipBoxProps) {
  const box = useRef<HTMLDivElement>(null);
  const [at, setAt] = useState({ left: 0, top: 0 });
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    element.showPopover?.();
    const { width, height } = element.getBoundingClientRect();
    const below = anchor.bottom + 6;
    setAt({
      left: Math.max(6, Math.min(anchor.left, window.innerWidth - width - 6)),
      top: below + height > window.innerHeight - 6 ? Math.max(6, anchor.top - height - 6) : below,
    });
  }, [anchor]);
  return createPortal(
    <div
      ref={box}
      popover="manual"
      role="tooltip"
      id={id}
      className="tip"
      style={at}
      onPointerEnter={stay}
      onPointerLeave={leave}
    >
      {children}
    </div>,
    document.body,
  );
}
