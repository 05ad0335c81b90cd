import type { PartId } from '../base/ids.ts';
import { dimensionsOf, recordOf, settingsOf, stationsOf } from '../build/look-up.ts';
import type { Build } from '../build/records.ts';
import type { Drawing } from '../drawing/drawing.ts';
import type { PartState } from '../solid/placed.ts';
import type { Solids } from '../solid/solids.ts';
import type { SheetSubject } from './sheet.ts';

/** Gathers what a sheet of a part is drawn from; undefined when the build has no such part. */
export function sheetSubject(
  build: Build,
  drawing: Drawing,
  solids: Pick<Solids, 'bodiesOf' | 'meshOf'>,
  id: PartId,
  state: PartState,
): SheetSubject | undefined {
  const part = recordOf(build, 'part', id);
  if (!part) return undefined;
  const dimensions = dimensionsOf(build, id);
  return {
    part,
    settings: settingsOf(build),
    state,
    stations: stationsOf(build, id),
    dimensions,
    axes: drawing.axesOf(id),
    resolved: new Map(dimensions.map((dimension) => [dimension.id, drawing.dimension(dimension.id)])),
    bodies: solids.bodiesOf(id),
    mesh: solids.meshOf(id, state),
  };
}
