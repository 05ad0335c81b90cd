import { type Cut, leastRadius } from '../setups/cuts.ts';
import { endOf, type LatheStand, latheStand, stretchBetween, workPieces } from '../setups/lathe-stand.ts';
import { knownCuts, type Scene } from '../setups/scene.ts';
import type { World } from '../setups/world.ts';
import { type Asking, asking } from './asking.ts';
import { atMostOf, farthestTerm } from './farthest-term.ts';
import { headRadius } from './over-saddle.ts';
import type { Question, Term } from './question.ts';
import { alongBed } from './saddle-at.ts';
import { isTurning, latheWay } from './turning.ts';

/**
 * Where the block may stand for a cut: with the edge at its middle, or led by it on one side or the other. Along the bed from
 * the edge, in widths of the block, towards the tailstock positive.
 */
const settings = [
  { block: 'middle', from: -0.5, to: 0.5 },
  { block: 'towards tail', from: 0, to: 1 },
  { block: 'towards head', from: -1, to: 0 },
] as const;
type Setting = (typeof settings)[number];
export type BlockPlace = Setting['block'];

/** Beside a cut nothing that is thinner counts, mm: the shoulder that the cut itself makes. */
const BESIDE_MM = 1e-6;

/**
 * Room for the tool: its block beside the work, beside what the spindle carries, and beside the tailstock; and whether a bar or a drill is long
 * enough.
 *
 * The block is `toolBlockWidth` wide along the bed and stands back from the line by the least radius that the edge comes to and the tool's reach before it
 * (`tool.overhang` of the operation, else `toolOverhang`). Of three ways to set it (edge in the middle of the block, at its head side, at its tail side)
 * the one that leaves most room is taken for the whole cut.
 *
 * - tool-reach: reach − (greatest radius of the work beside the cut, within the block's width − least radius of the cut). Stock that the cut itself
 *   takes off is left out. Of a boring bar: its free length − how deep the cut lies in the work. Of a drill: its free length − length of the cut.
 * - tool-block-head: the better of the room along the bed from the block to the jaws' ends (or the face plate), and of the
 *   room from their radius to the block.
 * - tool-block-tail: the same from the block to the front of the barrel, which lies `tailCentreLength` behind the point of the centre.
 */
export function askToolBlock(scene: Scene): readonly Question[] {
  if (!isTurning(scene)) return [];
  const stand = latheStand(scene);
  return knownCuts(scene).flatMap((cut) => {
    const way = latheWay(cut);
    if (way === 'outside') return outside(scene, stand, cut);
    if (way === 'inside') return [askBar(scene, stand, cut)];
    return way === 'drilled' ? [askDrill(scene, cut)] : [];
  });
}

/** How the block is set for a cut from without; undefined where too little is known to say. */
export function blockPlaceFor(scene: Scene, cut: Cut): BlockPlace | undefined {
  if (latheWay(cut) !== 'outside') return undefined;
  const block = blockOf(scene, latheStand(scene), cut);
  return block?.setting.block;
}

interface Block {
  readonly setting: Setting;
  readonly width: number;
  readonly reach: number;
}

const reachFor = (cut: Cut, ask: Asking): number => cut.overhangMm ?? ask.figure('toolOverhang');

function blockOf(scene: Scene, stand: LatheStand, cut: Cut): Block | undefined {
  const ask = asking(scene);
  const width = ask.figure('toolBlockWidth');
  const reach = reachFor(cut, ask);
  if (ask.unknown.length > 0) return undefined;
  const world = scene.worlds.drawn;
  const rooms = settings.map((setting) => {
    const block = { setting, width, reach };
    const beside = scene.worlds.adding.map((piece) => besideTerm(scene, stand, cut, block, world, piece));
    const terms = [...beside, headTerm(scene, stand, cut, block, world), tailTerm(scene, stand, cut, block, world)];
    return { block, room: Math.min(...terms.map((term) => (term ? term.has - term.needs : Infinity))) };
  });
  return rooms.reduce((best, one) => (one.room > best.room ? one : best)).block;
}

function outside(scene: Scene, stand: LatheStand, cut: Cut): readonly Question[] {
  const { adding } = scene.worlds;
  const id = cut.operation.id;
  const ask = asking(scene);
  ask.figure('toolBlockWidth');
  reachFor(cut, ask);
  const least = leastRadius(cut, scene.worlds.drawn);
  if (least === undefined) ask.miss({ is: 'field', field: 'cut/diameter' });
  const block = blockOf(scene, stand, cut);
  const beside: Question['term'] = (world, i) => besideTerm(scene, stand, cut, block!, world, adding[i]!);
  const questions = [
    ask.question('tool-reach', id, adding.length, beside, atMostOf(scene, (block?.reach ?? 0) + (least ?? 0))),
  ];
  const head = headQuestion(scene, stand, cut, block, ask.unknown);
  const tail = tailQuestion(scene, stand, cut, block, ask.unknown);
  return [...questions, ...(head ? [head] : []), ...(tail ? [tail] : [])];
}

/** The work beside the cut against the front of the block. */
function besideTerm(
  { worlds }: Scene,
  { sense }: LatheStand,
  cut: Cut,
  { setting, width, reach }: Block,
  world: World,
  piece: number,
): Term | undefined {
  const least = leastRadius(cut, world);
  if (least === undefined) return undefined;
  const stock = worlds.pieces[piece]!.grow + BESIDE_MM;
  const [head, tail] = alongBed(cut, world, sense);
  const sides = [
    [head + setting.from * width, head - stock],
    [tail + stock, tail + setting.to * width],
  ] as const;
  let worst: Term | undefined;
  for (const [from, to] of sides) {
    if (!(to > from)) continue;
    const term = farthestTerm(world, piece, stretchBetween(sense * from, sense * to), reach);
    if (term && (!worst || term.needs > worst.needs)) worst = term;
  }
  return worst && { ...worst, needs: worst.needs - least };
}

/** The better of two ways to clear. */
const better = (a: Term, b: Term | undefined): Term => (b && b.has - b.needs > a.has - a.needs ? b : a);

/** The block against the chuck's jaws or the face plate. */
function headTerm(scene: Scene, stand: LatheStand, cut: Cut, block: Block, world: World): Term | undefined {
  const { head, sense } = stand;
  const length = head && scene.figures.values.get(head.lengthKey);
  if (!head || length === undefined || stand.unknown.length > 0) return undefined;
  const front = sense * stand.nose(world) + length;
  const [edge] = alongBed(cut, world, sense);
  const along: Term = { has: edge - front, needs: -block.setting.from * block.width, at: sense * front };
  return better(along, radially(cut, block, world, headRadius(scene, head), sense * front));
}

/** The block against the barrel of the tailstock. */
function tailTerm(scene: Scene, stand: LatheStand, cut: Cut, block: Block, world: World): Term | undefined {
  const { tailPoint, sense } = stand;
  const length = scene.figures.values.get('tailCentreLength');
  if (!tailPoint || length === undefined) return undefined;
  const front = sense * tailPoint(world) + length;
  const [, edge] = alongBed(cut, world, sense);
  const along: Term = { has: front - edge, needs: block.setting.to * block.width, at: sense * front };
  const barrel = scene.figures.values.get('barrelDiameter');
  return better(along, radially(cut, block, world, barrel === undefined ? undefined : barrel / 2, sense * front));
}

function radially(cut: Cut, { reach }: Block, world: World, radius: number | undefined, at: number): Term | undefined {
  const least = leastRadius(cut, world);
  return radius === undefined || least === undefined ? undefined : { has: least + reach, needs: radius, at };
}

function headQuestion(
  scene: Scene,
  stand: LatheStand,
  cut: Cut,
  block: Block | undefined,
  unknown: Question['unknown'],
): Question | undefined {
  const { head } = stand;
  if (!head) return undefined;
  const ask = asking(scene);
  ask.miss(...unknown, ...stand.unknown);
  ask.figure(head.lengthKey);
  const term = block && headTerm(scene, stand, cut, block, scene.worlds.drawn);
  // Beside the jaws and not along the bed: then their radius must be known.
  if (term && term.has < term.needs) {
    ask.figure(head.diameterKey);
    if (head.is === 'chuck') ask.figure('jawReach');
  }
  return ask.question('tool-block-head', cut.operation.id, 1, (world) => headTerm(scene, stand, cut, block!, world));
}

function tailQuestion(
  scene: Scene,
  stand: LatheStand,
  cut: Cut,
  block: Block | undefined,
  unknown: Question['unknown'],
): Question | undefined {
  if (!stand.tailPoint) return undefined;
  const ask = asking(scene);
  ask.miss(...unknown);
  ask.figure('tailCentreLength');
  const term = block && tailTerm(scene, stand, cut, block, scene.worlds.drawn);
  if (term && term.has < term.needs) ask.figure('barrelDiameter');
  return ask.question('tool-block-tail', cut.operation.id, 1, (world) => tailTerm(scene, stand, cut, block!, world));
}

/** A boring bar: the block stays outside of the work, and no centre may stand in the bore. */
function askBar(scene: Scene, stand: LatheStand, cut: Cut): Question {
  const ask = asking(scene);
  const { sense, tailPoint } = stand;
  const { adding } = scene.worlds;
  const { bodies } = workPieces(scene);
  if (cut.overhangMm === undefined) ask.miss({ is: 'field', field: 'tool/overhang' });
  const length = cut.overhangMm ?? Number.NaN;
  return ask.question('tool-reach', cut.operation.id, 1, (world) => {
    const [deepest] = alongBed(cut, world, sense);
    const face = sense * endOf(world, bodies.length > 0 ? bodies : adding, sense, 'tail');
    // With a centre in the far end there is no way in at all.
    return { has: tailPoint ? 0 : length, needs: Math.max(0, face - deepest), at: sense * deepest };
  });
}

function askDrill(scene: Scene, cut: Cut): Question {
  const ask = asking(scene);
  if (cut.overhangMm === undefined) ask.miss({ is: 'field', field: 'tool/overhang' });
  const length = cut.overhangMm ?? Number.NaN;
  return ask.question('tool-reach', cut.operation.id, 1, (world) => {
    const [from, to] = alongBed(cut, world, 1);
    return { has: length, needs: to - from, at: from };
  });
}
