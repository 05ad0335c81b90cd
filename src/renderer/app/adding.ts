import type { PartId } from '../../shared/base/ids.ts';
import type { Axis } from '../../shared/build/station.ts';
import type { Engine } from '../engine/engine.ts';
import { askName } from './naming.ts';
import { notify, notifyOutcome } from './notices.ts';
import { goTo, placeNow } from './place.ts';

/** The part on show; without one, says that one must be chosen. */
export const needPart = (): PartId | undefined => {
  const { part } = placeNow();
  if (part === undefined)
    notify({ sentence: 'Choose a part first: stations, dimensions and solids belong to one.', isRefusal: true });
  return part;
};

/** Adds a part, selects it and asks for its name. */
export async function addPart(engine: Engine): Promise<void> {
  const outcome = notifyOutcome(await engine.run('part-add', {}));
  const id = outcome.ok ? outcome.added.find((added) => added.startsWith('part:')) : undefined;
  if (id === undefined) return;
  goTo({ department: 'drawing', part: id as PartId });
  askName(id);
}

export async function addStation(engine: Engine, axis: Axis): Promise<void> {
  const part = needPart();
  if (part === undefined) return;
  const outcome = notifyOutcome(await engine.run('station-add', { part, axis }));
  if (!outcome.ok) return;
  goTo({ department: 'drawing', subject: outcome.added[0] });
  askName(outcome.added[0]);
}

/** Adds a size to the part on show; where it runs from and to is said in its row. */
export async function addDimension(engine: Engine): Promise<void> {
  const part = needPart();
  if (part === undefined) return;
  const outcome = notifyOutcome(await engine.run('dimension-add', { part, measure: { type: 'size', form: 'length' } }));
  if (!outcome.ok) return;
  goTo({ department: 'drawing', subject: outcome.added[0] });
  askName(outcome.added[0]);
}
