import './view.css';
import { type ReactNode, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { between, directions, fitted, type Look, panned, type Side, sides, turned, zoomed } from './camera.ts';
import type { Stage, StagePicture } from './stage.ts';
import { useColours } from './use-colours.ts';

export interface SolidViewProps {
  /** What is shown, for the ear. */
  readonly label: string;
  readonly picture: StagePicture | undefined;
  readonly ghost?: StagePicture | undefined;
  /** Ids of the bodies that are picked out, and of those that are lit with them. */
  readonly lit: ReadonlySet<string>;
  readonly also: ReadonlySet<string>;
  /** Another of these fits the picture anew: another part. */
  readonly of: string;
  readonly onPick: (body: string | undefined) => void;
  /** The next or the previous body is asked for by keys. */
  readonly onStep: (by: 1 | -1) => void;
  /** Asked for from outside, by buttons. */
  readonly wish: ViewWish | undefined;
  /** What the stage's three axes are called, where they are not those of the part. */
  readonly axes?: readonly [string, string, string];
  /** What stands in place of the picture where it cannot be shown. */
  readonly missing: ReactNode;
}

/** A wish is carried out once; another object is another wish. */
export type ViewWish =
  | { readonly is: 'side'; readonly side: Side }
  | { readonly is: 'fit' }
  | { readonly is: 'zoom'; readonly factor: number };

/** Keys that look from a side. */
const sideKeys: Readonly<Record<string, Side>> = {
  f: 'front',
  b: 'back',
  r: 'right',
  l: 'left',
  t: 'top',
  u: 'underneath',
  s: 'slantwise',
};

const STEP_DEG = 15;
const STEP_PX = 48;
const ZOOM_STEP = 1.25;
const DEG_PER_PX = 0.5;
const FLIGHT_MS = 220;
const CLICK_PX = 4;

/** A shaded solid that can be turned, moved and come near to; the drawing engine is fetched when it is first needed. */
export function SolidView(props: SolidViewProps) {
  const { picture, ghost, lit, also, of, wish } = props;
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [stage, setStage] = useState<Stage>();
  const [missing, setMissing] = useState(false);
  const [look, setLook] = useState<Look>();
  const colours = useColours();
  const size = useRef({ width: 0, height: 0 });
  const latest = useRef<Look>(undefined);
  latest.current = look;
  const fittedFor = useRef('');
  /** The reader has chosen where to look: the picture no longer follows what it shows. */
  const chosen = useRef(false);

  useStage(canvas, setStage, () => setMissing(true));
  const fly = useFlight(latest, setLook);
  /** A look that the reader chooses: from then on the picture stays where it is put. */
  const choose = (change: (now: Look) => Look) => {
    chosen.current = true;
    setLook((now) => now && change(now));
  };
  const flyTo = (side: { readonly turn: number; readonly tip: number }) => {
    const all = stage?.box();
    chosen.current = false;
    if (all !== undefined && size.current.width > 0) fly(fitted(side, all, size.current.width, size.current.height));
  };

  useLayoutEffect(() => {
    const element = box.current;
    if (stage === undefined || element === null) return;
    const measure = () => {
      const { clientWidth: width, clientHeight: height } = element;
      if (width === 0 || height === 0) return;
      const first = size.current.width === 0;
      size.current = { width, height };
      stage.size(width, height, window.devicePixelRatio);
      if (first) {
        const all = stage.box();
        if (all !== undefined) setLook((now) => now ?? fitted(sides.slantwise, all, width, height));
      }
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [stage]);
  useEffect(() => stage?.colours(colours), [stage, colours]);
  useEffect(() => stage?.light(lit, also), [stage, lit, also]);
  // Another part is fitted at once. The same part is followed as it grows, until the reader chooses a place to look at.
  useLayoutEffect(() => {
    if (stage === undefined) return;
    stage.show(picture);
    stage.ghost(ghost);
    const all = stage.box();
    if (all === undefined || size.current.width === 0) return;
    if (fittedFor.current !== of) chosen.current = false;
    fittedFor.current = of;
    const { width, height } = size.current;
    setLook((now) => {
      if (now === undefined || !chosen.current) return fitted(now ?? sides.slantwise, all, width, height);
      return now;
    });
  }, [stage, picture, ghost, of]);
  useEffect(() => {
    if (look !== undefined) stage?.look(look);
  }, [stage, look]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a wish is carried out once, when it is made
  useEffect(() => {
    if (wish === undefined || look === undefined) return;
    if (wish.is === 'side') flyTo(sides[wish.side]);
    else if (wish.is === 'fit') flyTo(look);
    else choose((now) => zoomed(now, wish.factor));
  }, [wish]);
  useWheel(box, (factor, x, y, aside) =>
    choose((now) => (aside === 0 ? zoomed(now, factor, x, y) : panned(now, -aside, 0))),
  );
  const drag = useDrag(choose, (x, y) => props.onPick(stage?.pick(x, y)));

  const onKeyDown = (event: React.KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || look === undefined) return;
    const arrow = arrows[event.key];
    const side = sideKeys[event.key.toLowerCase()];
    if (arrow !== undefined)
      choose((now) =>
        event.shiftKey
          ? panned(now, -arrow[0] * STEP_PX, arrow[1] * STEP_PX)
          : turned(now, arrow[0] * STEP_DEG, arrow[1] * STEP_DEG),
      );
    else if (side !== undefined) flyTo(sides[side]);
    else if (event.key === '+' || event.key === '=') choose((now) => zoomed(now, ZOOM_STEP));
    else if (event.key === '-') choose((now) => zoomed(now, 1 / ZOOM_STEP));
    else if (event.key === '0') flyTo(look);
    else if (event.key === 'PageDown') props.onStep(1);
    else if (event.key === 'PageUp') props.onStep(-1);
    else if (event.key === 'Escape') props.onPick(undefined);
    else return;
    event.preventDefault();
  };
  if (missing) return <div className="solid-missing">{props.missing}</div>;
  return (
    <div
      ref={box}
      className="solid-view"
      role="application"
      aria-label={props.label}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is turned by keys
      tabIndex={0}
      data-pane-entry
      onKeyDown={onKeyDown}
      onContextMenu={(event) => event.preventDefault()}
      {...drag}
    >
      <canvas ref={canvas} />
      {look !== undefined && <Tripod look={look} names={props.axes ?? partAxes} />}
    </div>
  );
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

function useStage(
  canvas: React.RefObject<HTMLCanvasElement | null>,
  onStage: (stage: Stage | undefined) => void,
  onMissing: () => void,
): void {
  const told = useRef({ onStage, onMissing });
  told.current = { onStage, onMissing };
  useEffect(() => {
    let made: Stage | undefined;
    let gone = false;
    // Three quarters of a megabyte that a reader of tables does without.
    import('./stage.ts')
      .then(({ createStage }) => {
        if (gone || canvas.current === null) return;
        made = createStage(canvas.current, () => told.current.onMissing());
        told.current.onStage(made);
      })
      .catch((error: unknown) => {
        console.warn(error);
        told.current.onMissing();
      });
    return () => {
      gone = true;
      made?.dispose();
      told.current.onStage(undefined);
    };
  }, [canvas]);
}

/** Goes to another look in a short while; at once where motion is not wanted. */
function useFlight(from: React.RefObject<Look | undefined>, onLook: (look: Look) => void): (to: Look) => void {
  const frame = useRef(0);
  useEffect(() => () => cancelAnimationFrame(frame.current), []);
  return (to) => {
    cancelAnimationFrame(frame.current);
    const start = from.current;
    if (start === undefined || window.matchMedia('(prefers-reduced-motion: reduce)').matches) return onLook(to);
    const began = performance.now();
    const go = () => {
      const part = Math.min(1, (performance.now() - began) / FLIGHT_MS);
      onLook(between(start, to, 1 - (1 - part) ** 3));
      if (part < 1) frame.current = requestAnimationFrame(go);
    };
    go();
  };
}

/** Left button turns, another button or Shift moves; a press without a move picks. */
function useDrag(
  onLook: (change: (now: Look) => Look) => void,
  onPress: (x: number, y: number) => void,
): Pick<React.HTMLAttributes<HTMLDivElement>, 'onPointerDown' | 'onPointerMove' | 'onPointerUp' | 'onPointerCancel'> {
  const held = useRef<{ x: number; y: number; moved: number; pan: boolean } | undefined>(undefined);
  return {
    onPointerDown: (event) => {
      held.current = { x: event.clientX, y: event.clientY, moved: 0, pan: event.button !== 0 || event.shiftKey };
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    onPointerMove: (event) => {
      const from = held.current;
      if (from === undefined) return;
      const [dx, dy] = [event.clientX - from.x, event.clientY - from.y];
      from.moved += Math.abs(dx) + Math.abs(dy);
      from.x = event.clientX;
      from.y = event.clientY;
      if (from.moved < CLICK_PX) return;
      onLook((now) => (from.pan ? panned(now, dx, dy) : turned(now, -dx * DEG_PER_PX, dy * DEG_PER_PX)));
    },
    onPointerUp: (event) => {
      const from = held.current;
      held.current = undefined;
      if (from === undefined || from.moved >= CLICK_PX || event.button !== 0) return;
      const rect = event.currentTarget.getBoundingClientRect();
      onPress(event.clientX - rect.left - rect.width / 2, event.clientY - rect.top - rect.height / 2);
    },
    onPointerCancel: () => {
      held.current = undefined;
    },
  };
}

/** React's wheel listener is passive and cannot keep the page still. A pinch comes as a wheel with Ctrl. */
function useWheel(
  box: React.RefObject<HTMLDivElement | null>,
  onWheel: (factor: number, x: number, y: number, aside: number) => void,
): void {
  const latest = useRef(onWheel);
  latest.current = onWheel;
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const listener = (event: WheelEvent) => {
      event.preventDefault();
      const rect = element.getBoundingClientRect();
      const aside = event.shiftKey ? event.deltaY || event.deltaX : event.ctrlKey ? 0 : event.deltaX;
      const speed = event.ctrlKey ? 100 : 500;
      latest.current(
        Math.exp(-event.deltaY / speed),
        event.clientX - rect.left - rect.width / 2,
        event.clientY - rect.top - rect.height / 2,
        aside,
      );
    };
    element.addEventListener('wheel', listener, { passive: false });
    return () => element.removeEventListener('wheel', listener);
  }, [box]);
}

const ARM = 26;

const partAxes = ['X', 'Y', 'Z'] as const;

/** The three axes as they lie in the picture. */
function Tripod({ look, names }: { readonly look: Look; readonly names: readonly [string, string, string] }) {
  const { right, up, towards } = directions(look);
  const arms = names
    .map((axis, k) => ({ axis, x: right[k]! * ARM, y: -up[k]! * ARM, near: towards[k]! }))
    .sort((a, b) => a.near - b.near);
  return (
    <svg className="solid-tripod" viewBox="-42 -42 84 84" width="84" height="84" aria-hidden="true">
      {arms.map(({ axis, x, y }) => (
        <g key={axis}>
          <line x2={x} y2={y} />
          {Math.hypot(x, y) > 6 && (
            <text x={x * 1.38} y={y * 1.38} dy="0.36em">
              {axis}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}
