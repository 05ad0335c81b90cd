import { type Cut, leastRadius } from '../setups/cuts.ts';
import { type LatheStand, stretchBetween } from '../setups/lathe-stand.ts';
import type { Scene } from '../setups/scene.ts';
import type { World } from '../setups/world.ts';
import type { Asking } from './asking.ts';
import { farthestTerm } from './farthest-term.ts';
import type { Term } from './question.ts';
import { alongBed } from './saddle-at.ts';
import { headRadius } from './saddle-terms.ts';

/**
 * Where the block may stand for a cut: with the edge at its middle, or led by it on one side or the other. Along the bed from
 * the edge, in widths of the block, towards the tailstock positive.
 */
export const blockSettings = [
  { block: 'middle', from: -0.5, to: 0.5 },
  { block: 'towards tail', from: 0, to: 1 },
  { block: 'towards head', from: -1, to: 0 },
] as const;
export type BlockSetting = (typeof blockSettings)[number];

/** Beside a cut nothing that is thinner counts, mm: the shoulder that the cut itself makes. */
const BESIDE_MM = 1e-6;

/** The block as it is set for a cut. */
export interface Block {
  readonly setting: BlockSetting;
  readonly width: number;
  readonly reach: number;
}

export const reachFor = (cut: Cut, ask: Asking): number => cut.overhangMm ?? ask.figure('toolOverhang');

/** The work beside the cut against the front of the block. */
export function besideTerm(
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
export function headTerm(scene: Scene, stand: LatheStand, cut: Cut, block: Block, world: World): Term | undefined {
  const { head, sense } = stand;
  const length = head && scene.figures.values.get(head.lengthKey);
  if (!head || length === undefined || stand.unknown.length > 0) return undefined;
  const front = sense * stand.nose(world) + length;
  const [edge] = alongBed(cut, world, sense);
  const along: Term = { has: edge - front, needs: -block.setting.from * block.width, at: sense * front };
  return better(along, radially(cut, block, world, headRadius(scene, head), sense * front));
}

/** The block against the barrel of the tailstock. */
export function tailTerm(scene: Scene, stand: LatheStand, cut: Cut, block: Block, world: World): Term | undefined {
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
