import type { Scene } from '../setups/scene.ts';
import { isTurning } from '../verdicts/turning.ts';
import type { Judged } from './judged.ts';
import { latheScene } from './picture-lathe.ts';
import { tableScene } from './picture-table.ts';
import type { SetupScene } from './scene.ts';

/** A set-up in the places of its picture; undefined where it is not known how the work lies. */
export function pictureScene(scene: Scene, judged: Judged): SetupScene | undefined {
  return isTurning(scene) ? latheScene(scene, judged) : tableScene(scene, judged);
}
