import type { PartId, StationId } from '../../../shared/base/ids.ts';
import { type Axis, axes } from '../../../shared/build/station.ts';
import { greatestSize } from '../../../shared/solid/greatest-size.ts';
import type { Ask } from '../view.ts';

/** The part that a solid is to become a body of, as the dialog needs it. */
export interface SolidHome {
  readonly part: PartId;
  readonly name: string;
  /** The greatest size that the drawing gives of it, in mm; undefined when it gives none. */
  readonly greatestMm: number | undefined;
  readonly stations: Readonly<Record<Axis, readonly { readonly id: StationId; readonly name: string }[]>>;
}

/** What a solid is held against before it comes in. Undefined when the part is not there any more. */
export const solidHomeAsk: Ask<{ readonly part: PartId }, SolidHome | undefined> = ({ index, works }, { part }) => {
  const found = index.part(part);
  if (found === undefined) return undefined;
  const along = (axis: Axis) =>
    index
      .stationsOf(part)
      .flatMap((station) => (station.axis === axis ? [{ id: station.id, name: station.name }] : []));
  const [x, y, z] = axes;
  return {
    part,
    name: found.name,
    greatestMm: greatestSize(part, works.build, works.drawing),
    stations: { [x]: along(x), [y]: along(y), [z]: along(z) } as SolidHome['stations'],
  };
};
