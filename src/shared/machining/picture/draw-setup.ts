import { latheAbove } from './lathe-above.ts';
import { latheEnd } from './lathe-end.ts';
import { latheFront } from './lathe-front.ts';
import type { SetupPicture } from './picture.ts';
import type { LatheLook, SetupScene } from './scene.ts';
import { drawTable } from './table-views.ts';

/**
 * Draws a set-up to scale, mm: what is not known of the machine is left out, never guessed, save for sizes that only the eye
 * needs (the depth of a bed, the length of a headstock), which nothing is measured by.
 */
export function drawSetup(scene: SetupScene, look: LatheLook): SetupPicture {
  if (scene.is === 'table') return drawTable(scene, look);
  return { views: [latheFront(scene, look), latheEnd(scene, look), latheAbove(scene, look)] };
}
