import { type Cut as KnownCut, shownCut } from '../setups/cuts.ts';
import type { Scene } from '../setups/scene.ts';
import { type BlockPlace, blockPlaceFor } from '../verdicts/tool-block.ts';
import type { Cut, Span } from './scene.ts';

const blocks: Readonly<Record<BlockPlace, Span>> = {
  middle: [-0.5, 0.5],
  'towards tail': [0, 1],
  'towards head': [-1, 0],
};

/** A cut in the places of the picture; `place` tells them from those of the part. */
export function pictureCut(scene: Scene, cut: KnownCut, place: (at: number) => number): Cut {
  const world = scene.worlds.drawn;
  const { operation, way, from, to, radius, inner } = shownCut(cut, world);
  const [a, b] = [place(from), place(to)];
  const setting = way === 'outside' ? blockPlaceFor(scene, cut) : undefined;
  return {
    operation,
    name: cut.operation.name,
    way,
    from: Math.min(a, b),
    to: Math.max(a, b),
    radius,
    inner,
    toolRadius: cut.toolDiameter && world.amount(cut.toolDiameter) / 2,
    toolLength: cut.overhangMm,
    block: blocks[setting ?? 'middle'],
  };
}
