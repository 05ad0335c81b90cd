import { type Cut as KnownCut, shownCut } from '../setups/cuts.ts';
import { latheStand } from '../setups/lathe-stand.ts';
import type { Scene } from '../setups/scene.ts';
import { toolStandFor } from '../verdicts/tool-stand.ts';
import type { Cut } from './scene.ts';

/** A cut in the places of the picture; `place` tells them from those of the part. */
export function pictureCut(scene: Scene, cut: KnownCut, place: (at: number) => number): Cut {
  const world = scene.worlds.drawn;
  const { operation, way, from, to, radius, inner } = shownCut(cut, world);
  const [a, b] = [place(from), place(to)];
  const { block, shift } = toolStandFor(scene, latheStand(scene), cut);
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
    block: block ? [block.setting.from, block.setting.to] : [-0.5, 0.5],
    shift,
  };
}
