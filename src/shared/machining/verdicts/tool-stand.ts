import type { Cut } from '../setups/cuts.ts';
import type { LatheStand } from '../setups/lathe-stand.ts';
import type { Scene } from '../setups/scene.ts';
import { asking } from './asking.ts';
import {
  type Block,
  type BlockSetting,
  besideTerm,
  blockSettings,
  headTerm,
  reachFor,
  tailTerm,
} from './block-terms.ts';
import type { Term } from './question.ts';
import { saddleFor } from './saddle-at.ts';
import { headPiece, overZone, saddleKinds, saddleZone } from './saddle-terms.ts';
import { barrelOver } from './tailstock-reach.ts';
import { latheWay } from './turning.ts';

/** How block and saddle stand for a cut from without. */
export interface ToolStand {
  /** Undefined where too little is known of it. */
  readonly block: Block | undefined;
  /** How far the saddle stands from where a tool set square would have it, towards the tailstock positive, mm. */
  readonly shift: number;
}

/** Room of more than this is as good as any: then the tool stands as squarely as it can. mm */
const ENOUGH_MM = 5;

/** Where there is a choice, the saddle keeps so far out from under what it does not pass, along the bed: castings are not as drawn. mm */
const ASIDE_MM = 3;

/** Places of the top slide that are looked at, to each side of its middle. */
const STEPS = 6;

const square: ToolStand = { block: undefined, shift: 0 };

const known = new WeakMap<Scene, Map<Cut, ToolStand>>();

/**
 * How the tool is set for a cut: with its edge at the middle of the block, at the block's head side or at its tail side; and how far the top slide,
 * set along the bed, carries the block to the one side or the other: by half of `topSlideTravel` at most, since the saddle's figures are taken with
 * it in its middle (common practice, no source). So the saddle may keep out from under work that its cross slide would not pass, as it does for
 * whatever is large and faced, or turned close to the chuck.
 *
 * Of all ways the one that leaves most room beside the work, at chuck, plate and tailstock, and over the saddle is taken, for the whole cut; what is square
 * and has room enough, a few millimetres along the bed as well, comes first.
 */
export function toolStandFor(scene: Scene, stand: LatheStand, cut: Cut): ToolStand {
  if (latheWay(cut) !== 'outside') return square;
  let stands = known.get(scene);
  if (!stands) {
    stands = new Map();
    known.set(scene, stands);
  }
  let found = stands.get(cut);
  if (!found) {
    found = chooseStand(scene, stand, cut);
    stands.set(cut, found);
  }
  return found;
}

export const shiftFor = (scene: Scene, stand: LatheStand, cut: Cut): number => toolStandFor(scene, stand, cut).shift;

function chooseStand(scene: Scene, stand: LatheStand, cut: Cut): ToolStand {
  const ask = asking(scene);
  const width = ask.figure('toolBlockWidth');
  const reach = reachFor(cut, ask);
  const isKnown = ask.unknown.length === 0;
  const half = (ask.figureIfKnown('topSlideTravel') ?? 0) / 2;
  const slides = half > 0 ? slidePlaces(half) : [0];
  const overSaddle = saddleRoom(scene, stand, cut);
  const settings: readonly (BlockSetting | undefined)[] = isKnown ? blockSettings : [undefined];
  let best: Candidate | undefined;
  for (const setting of settings) {
    const block = setting && { setting, width, reach };
    const ahead = block ? ((block.setting.from + block.setting.to) / 2) * width : 0;
    const beside = Math.min(ENOUGH_MM, block ? blockRoom(scene, stand, cut, block) : ENOUGH_MM);
    for (const slide of slides) {
      if (best && beside <= best.aside) break;
      const shift = ahead + slide;
      const aside = Math.min(beside, overSaddle(shift, ASIDE_MM));
      const room = aside === beside ? beside : Math.min(beside, overSaddle(shift, 0));
      if (!best || aside > best.aside || (aside === best.aside && room > best.room))
        best = { stand: { block, shift }, aside, room };
    }
  }
  return best?.stand ?? square;
}

/** A way to stand, the room that it leaves, and what of that is left a little aside. */
interface Candidate {
  readonly stand: ToolStand;
  readonly room: number;
  readonly aside: number;
}

/** Nearest to the middle first. */
function slidePlaces(half: number): readonly number[] {
  const places = [0];
  for (let k = 1; k <= STEPS; k++) places.push((half * k) / STEPS, (-half * k) / STEPS);
  return places;
}

const roomOf = (term: Term | undefined): number => (term ? term.has - term.needs : Infinity);

function blockRoom(scene: Scene, stand: LatheStand, cut: Cut, block: Block): number {
  const world = scene.worlds.drawn;
  const beside = scene.worlds.adding.map((piece) => roomOf(besideTerm(scene, stand, cut, block, world, piece)));
  const atEnds = [headTerm(scene, stand, cut, block, world), tailTerm(scene, stand, cut, block, world)].map(roomOf);
  return Math.min(...beside, ...atEnds);
}

/**
 * The room over the saddle and between it and the tailstock, as far as it is known, by how far the saddle stands off square; what comes nearer to the saddle
 * than `aside` along the bed counts as over it.
 */
function saddleRoom(scene: Scene, stand: LatheStand, cut: Cut): (shift: number, aside: number) => number {
  const world = scene.worlds.drawn;
  const turnsWith = headPiece(scene, stand);
  const zones = saddleKinds.flatMap((kind) => {
    const ask = asking(scene);
    const zone = saddleZone(kind, ask);
    return ask.unknown.length === 0 ? [{ scene, stand, zone, turnsWith }] : [];
  });
  const carriers = scene.worlds.adding.length + 1;
  const travel = scene.figures.values.get('barrelTravel');
  return (shift, aside) => {
    const edge = saddleFor(cut, stand.sense, asking(scene), shift);
    if (!edge) return Infinity;
    const [head, tail] = edge(world);
    const places = [head - aside, tail + aside] as const;
    let room = Infinity;
    for (const over of zones) {
      for (let i = 0; i < carriers; i++) room = Math.min(room, roomOf(overZone(over, places, world, i)));
    }
    const ask = asking(scene);
    const barrel = barrelOver(stand, cut, ask, shift);
    if (barrel && travel !== undefined && ask.unknown.length === 0) room = Math.min(room, travel - barrel(world));
    return room;
  };
}
