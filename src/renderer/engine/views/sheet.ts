import type { PartId } from '../../../shared/base/ids.ts';
import { drawSheet } from '../../../shared/sheet/draw-sheet.ts';
import type { Sheet, SheetOptions } from '../../../shared/sheet/sheet.ts';
import { sheetSubject } from '../../../shared/sheet/sheet-subject.ts';
import type { PartState } from '../../../shared/solid/placed.ts';
import { defineView } from '../view.ts';

export interface SheetParams extends SheetOptions {
  readonly part: PartId;
  readonly state: PartState;
}

/**
 * The sheet of a part. While its solid is being worked out the last sheet stays; it is drawn without a solid only when
 * there will be none. Undefined when the part is not there any more.
 */
export const sheetView = defineView<SheetParams, Sheet | undefined>({
  late: true,
  ofSolid: true,
  open: () => {
    let last: { readonly from: readonly unknown[]; readonly sheet: Sheet } | undefined;
    return (scene, { part, state, ...options }) => {
      const { works, solids, index, meshOf } = scene;
      const record = index.part(part);
      if (record === undefined) return undefined;
      const waits =
        scene.kernel !== 'failed' && solids.bodiesOf(part).some(({ shape }) => shape) && !solids.solidOf(part);
      if (waits && (scene.kernel !== 'there' || solids.pending().includes(part))) return last?.sheet;
      const gathered = sheetSubject(works.build, works.drawing, { bodiesOf: solids.bodiesOf, meshOf }, part, state);
      if (gathered === undefined) return undefined;
      // The index keeps its lists until an edit touches them; then a sheet that would be the same is not drawn again.
      const subject = { ...gathered, stations: index.stationsOf(part), dimensions: index.dimensionsOf(part) };
      const { resolved, axes, ...rest } = subject;
      const behind = [...Object.values(rest), ...axes, ...resolved.values()];
      if (last && same(last.from, behind)) return last.sheet;
      last = { from: behind, sheet: drawSheet(subject, options) };
      return last.sheet;
    };
  },
});

const same = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i]);
