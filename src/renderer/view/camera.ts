/** How the part is looked at: turned about Z, then tipped; what stands in the middle; mm per pixel. */
export interface Look {
  /** Degrees from the front (0: from −Y, X to the right) to the right-hand side (90: from +X). */
  readonly turn: number;
  /** Degrees above the level; 90 looks straight down. */
  readonly tip: number;
  /** The point of the part in the middle of the picture, mm. */
  readonly middle: readonly [x: number, y: number, z: number];
  readonly mmPerPixel: number;
}

export interface Box3 {
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
}

/** The sides that a part can be looked at from. */
export const sides = {
  front: { turn: 0, tip: 0 },
  back: { turn: 180, tip: 0 },
  right: { turn: 90, tip: 0 },
  left: { turn: -90, tip: 0 },
  top: { turn: 0, tip: 90 },
  underneath: { turn: 0, tip: -90 },
  slantwise: { turn: 35, tip: 28 },
} as const;
export type Side = keyof typeof sides;

const rad = (deg: number): number => (deg * Math.PI) / 180;

/** Unit directions in the part's axes: to the right and upwards in the picture, and towards the eye. */
export function directions({ turn, tip }: Pick<Look, 'turn' | 'tip'>) {
  const [s, c, st, ct] = [Math.sin(rad(turn)), Math.cos(rad(turn)), Math.sin(rad(tip)), Math.cos(rad(tip))];
  return {
    right: [c, s, 0],
    up: [-s * st, c * st, ct],
    towards: [s * ct, -c * ct, st],
  } as const;
}

const MARGIN = 0.86;

/** Puts a box in the middle of the picture, as large as it goes. */
export function fitted(look: Pick<Look, 'turn' | 'tip'>, { min, max }: Box3, width: number, height: number): Look {
  const { right, up } = directions(look);
  const across = (direction: readonly number[]) =>
    direction.reduce((sum, part, k) => sum + Math.abs(part) * (max[k]! - min[k]!), 0);
  const scale = Math.max(across(right) / Math.max(1, width), across(up) / Math.max(1, height)) / MARGIN;
  return {
    turn: look.turn,
    tip: look.tip,
    middle: [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2],
    mmPerPixel: Math.max(scale, 1e-6),
  };
}

/** Turns by so many degrees; never over the top, so that up stays up. */
export const turned = (look: Look, byTurn: number, byTip: number): Look => ({
  ...look,
  turn: ((look.turn + byTurn + 540) % 360) - 180,
  tip: Math.min(90, Math.max(-90, look.tip + byTip)),
});

/** Moves the picture by pixels, to the right and down. */
export function panned(look: Look, dx: number, dy: number): Look {
  const { right, up } = directions(look);
  const middle = look.middle.map((at, k) => at + (-dx * right[k]! + dy * up[k]!) * look.mmPerPixel);
  return { ...look, middle: middle as unknown as Look['middle'] };
}

/** Comes closer by the factor, about a place in pixels from the middle of the picture. */
export function zoomed(look: Look, factor: number, x = 0, y = 0): Look {
  const nearer = { ...panned(look, -x, -y), mmPerPixel: Math.min(1e4, Math.max(1e-6, look.mmPerPixel / factor)) };
  return panned(nearer, x, y);
}

/** Part of the way from one look to another; 1 is all of it. The turn goes the short way round. */
export function between(from: Look, to: Look, part: number): Look {
  const mix = (a: number, b: number) => a + (b - a) * part;
  const round = ((to.turn - from.turn + 540) % 360) - 180;
  return {
    turn: part === 1 ? to.turn : from.turn + round * part,
    tip: mix(from.tip, to.tip),
    middle: to.middle.map((at, k) => mix(from.middle[k]!, at)) as unknown as Look['middle'],
    mmPerPixel: Math.exp(mix(Math.log(from.mmPerPixel), Math.log(to.mmPerPixel))),
  };
}
