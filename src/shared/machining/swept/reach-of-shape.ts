import { unreachable } from '../../base/assert.ts';
import type { ExactShape } from '../../solid/placed.ts';
import { acrossExtrusion } from './across-extrusion.ts';
import { acrossTurned } from './across-turned.ts';
import { alongExtrusion } from './along-extrusion.ts';
import { alongTurned } from './along-turned.ts';
import { extrusionAskew, turnedAskew } from './askew.ts';
import { grownShape, MESH_CORNER } from './grown-shape.ts';
import { meshReach } from './mesh-reach.ts';
import type { Pose } from './pose.ts';
import type { Reach } from './reach.ts';

/** How far a shape with stock of `grow` mm all round reaches from the line, by the way in which its axis lies to it. */
export function reachOfShape(drawn: ExactShape, grow: number, pose: Pose): Reach {
  const shape = grownShape(drawn, grow);
  const along = Math.abs(pose.ax) === 1;
  const across = pose.ax === 0;
  switch (shape.is) {
    case 'extrusion':
      return along ? alongExtrusion(shape, pose) : across ? acrossExtrusion(shape, pose) : extrusionAskew(shape, pose);
    case 'turned':
      return along ? alongTurned(shape, pose) : across ? acrossTurned(shape, pose) : turnedAskew(shape, pose);
    case 'mesh':
      return meshReach(shape, pose, grow, MESH_CORNER * grow);
    default:
      return unreachable(shape);
  }
}
