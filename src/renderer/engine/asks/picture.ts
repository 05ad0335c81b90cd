import type { PartId } from '../../../shared/base/ids.ts';
import type { PartState } from '../../../shared/solid/placed.ts';
import { type Picture, pictureOf } from '../solid/picture.ts';
import type { Ask } from '../view.ts';

/** The solid of a part as it is shown; undefined while there is none. */
export const pictureAsk: Ask<{ readonly part: PartId; readonly state: PartState }, Picture | undefined> = (
  scene,
  { part, state },
) => {
  const mesh = scene.meshOf(part, state) ?? scene.solids.shownMeshOf(part, state);
  return mesh && pictureOf(mesh);
};
