import type { PartId, SetupId } from '../../../shared/base/ids.ts';
import type { SetupModel } from '../machining/models.ts';
import { sizeOptions, stationOptions } from '../machining/name-options.ts';
import { defineView } from '../view.ts';

/** One set-up with all that is said of it. Undefined when it is not there any more. */
export const setupView = defineView<{ readonly setup: SetupId; readonly part: PartId }, SetupModel | undefined>({
  ofSolid: true,
  open:
    () =>
    (scene, { setup }) => {
      const { index } = scene;
      const record = index.setup(setup);
      const part = record && index.part(record.part);
      if (record === undefined || part === undefined) return undefined;
      return {
        record,
        part: part.name,
        unit: index.settings().lengthUnit,
        stations: stationOptions(scene, part.id),
        sizes: sizeOptions(scene, part.id),
        operations: index
          .operationsOf(part.id)
          .map(({ id, name, process }) => ({ id, name, aside: process, axis: undefined })),
        machines: index.machines().map(({ id, name, type }) => ({ id, name, type })),
        parts: index.parts().map(({ id, name, number }) => ({ id, name, aside: number, axis: undefined })),
        problems: {},
        verdicts: [],
        unknown: [],
        balance: [],
        scene: undefined,
        from: { at: 0, sign: 1 },
        picture: 0,
      };
    },
});
