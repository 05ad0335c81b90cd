import type { PartId } from '../../../shared/base/ids.ts';
import type { Sheet, SheetOptions } from '../../../shared/sheet/sheet.ts';
import { sheetSubject } from '../../../shared/sheet/sheet-subject.ts';
import type { PartState } from '../../../shared/solid/placed.ts';
import { defineView, type Scene } from '../view.ts';

export interface SheetParams extends SheetOptions {
  readonly part: PartId;
  readonly state: PartState;
}

export interface SheetModel {
  /** As last drawn; not there until it was drawn once. It comes from the worker that draws it, past this view. */
  readonly sheet?: Sheet;
  /** Whether it shows the part as it is now, or is being drawn anew. */
  readonly isFresh: boolean;
}

/**
 * The sheet of a part. While its solid is being measured the last sheet stays; it is drawn without a solid only when there will
 * be none. Undefined when the part is not there any more.
 */
export const sheetView = defineView<SheetParams, SheetModel | undefined>({
  late: true,
  ofSolid: true,
  open: (key) => {
    let asked: readonly unknown[] | undefined;
    return (scene, { part, state, ...options }) => {
      const { works, solids, index, measuring } = scene;
      const bodies = solids.bodiesOf(part);
      const gathered =
        index.part(part) &&
        sheetSubject(works.build, works.drawing, { bodiesOf: solids.bodiesOf, meshOf: () => undefined }, part, state);
      if (gathered === undefined) {
        asked = undefined;
        measuring.leave(key);
        return undefined;
      }
      if (waits(scene, part)) return { isFresh: false };
      // The index keeps its lists until an edit touches them; then a sheet that would be the same is not drawn again.
      const { bodies: _bodies, mesh: _mesh, ...rest } = gathered;
      const subject = { ...rest, stations: index.stationsOf(part), dimensions: index.dimensionsOf(part) };
      const { resolved, axes, ...others } = subject;
      const behind = [...Object.values(others), ...axes, ...resolved.values(), ...bodies, solids.solidOf(part)];
      if (asked === undefined || !same(asked, behind)) {
        asked = behind;
        measuring.draw(key, subject, bodies, options);
      }
      return { isFresh: measuring.isDrawn(key) };
    };
  },
});

/** Whether there will be a solid, or another than there is. */
function waits({ kernel, solids }: Scene, part: PartId): boolean {
  if (kernel === 'failed' || !solids.bodiesOf(part).some(({ shape }) => shape) || solids.solidOf(part)) return false;
  return kernel !== 'there' || solids.pending().includes(part);
}

const same = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i]);
