import type { PartId } from '../../../shared/base/ids.ts';
import type { NameOption } from '../machining/models.ts';
import { stationOptions } from '../machining/name-options.ts';
import type { Ask } from '../view.ts';

/** The stations of a part by name, each with its place. */
export const stationsAsk: Ask<{ readonly part: PartId }, readonly NameOption[]> = (scene, { part }) =>
  stationOptions(scene, part);
