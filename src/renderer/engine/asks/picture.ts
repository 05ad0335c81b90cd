import type { PartId } from '../../../shared/base/ids.ts';
import type { PartState } from '../../../shared/solid/placed.ts';
import { type Picture, pictureOf } from '../solid/picture.ts';
import type { Ask } from '../view.ts';

/** The solid of a part as it is shown; undefined while there is none. */
export const pictureAsk: Ask<{ readonly part: PartId; readonly state: PartState }, Picture | undefined> = async (
  { solids, measuring },
  { part, state },
) => {
  const measured = solids.solidOf(part) && (await measuring.pictureOf(part, state));
  if (measured) return measured;
  const mesh = solids.liveMeshOf(part, state);
  return mesh && pictureOf(mesh);
};
