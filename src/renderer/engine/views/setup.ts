import type { PartId, SetupId } from '../../../shared/base/ids.ts';
import type { Setup } from '../../../shared/build/setup.ts';
import { judgedOf } from '../../../shared/machining/picture/judged.ts';
import { pictureScene } from '../../../shared/machining/picture/picture-scene.ts';
import type { SetupScene } from '../../../shared/machining/picture/scene.ts';
import type { SetupCheck } from '../../../shared/machining/setup-check.ts';
import { formatNumber } from '../../../shared/quantity/format.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';
import { checkOf } from '../machining/checks.ts';
import type { SetupModel } from '../machining/models.ts';
import { sizeOptions, stationOptions } from '../machining/name-options.ts';
import { machineScene } from '../machining/setup-scene.ts';
import { problemsOf, unknownRow } from '../machining/unknown-words.ts';
import { verdictRows } from '../machining/verdict-rows.ts';
import { show } from '../show.ts';
import { defineView, type Scene } from '../view.ts';

/** One set-up with all that is said of it. Undefined when it is not there any more. */
export const setupView = defineView<{ readonly setup: SetupId; readonly part: PartId }, SetupModel | undefined>({
  ofSolid: true,
  open: () => {
    let seen: readonly unknown[] = [];
    let picture = 0;
    let last: { readonly from: readonly unknown[]; readonly model: SetupModel } | undefined;
    return (scene, { setup }) => {
      const { index, works, solids } = scene;
      const record = index.setup(setup);
      const part = record && index.part(record.part);
      if (record === undefined || part === undefined) return undefined;
      const check = checkOf(scene, record);
      const held = [record.part, ...record.fellows.map((fellow) => fellow.part)];
      const look = [record, check.profile, solids.figuresOf(record.part), ...held.map(solids.bodiesOf)];
      if (!same(look, seen)) picture++;
      seen = look;
      const from: unknown[] = [
        check,
        picture,
        index.settings(),
        index.machines(),
        index.parts(),
        index.operationsOf(record.part),
      ];
      for (const id of held) from.push(index.stationsOf(id), index.dimensionsOf(id), ...works.drawing.axesOf(id));
      if (last === undefined || !same(from, last.from))
        last = { from, model: modelOf(scene, record, part.name, check, picture) };
      return last.model;
    };
  },
});

const same = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((value, i) => value === b[i]);

function modelOf(scene: Scene, record: Setup, part: string, check: SetupCheck, picture: number): SetupModel {
  const { index } = scene;
  const unit = index.settings().lengthUnit;
  const on = machineScene(scene, record).on;
  const shown = on && pictureScene(on, judgedOf(check));
  const { unknown, verdicts, balance } = check;
  return {
    record,
    part,
    unit,
    stations: stationOptions(scene, record.part),
    sizes: sizeOptions(scene, record.part),
    operations: index
      .operationsOf(record.part)
      .map(({ id, name, process }) => ({ id, name, aside: process, axis: undefined })),
    machines: index.machines().map(({ id, name, type }) => ({ id, name, type })),
    parts: index.parts().map(({ id, name, number }) => ({ id, name, aside: number, axis: undefined })),
    problems: problemsOf([...unknown, ...verdicts.flatMap((verdict) => verdict.unknown)]),
    verdicts: verdictRows(scene, record, verdicts, shown?.frame),
    unknown: unknown.map((one) => unknownRow(scene, record.part, one)),
    balance: balance === undefined ? [] : balanceRows(balance, unit),
    balanceUnknown: check.balanceUnknown.map((one) => unknownRow(scene, record.part, one)),
    scene: shown,
    from: shown === undefined ? { at: 0, sign: 1 } : placeFrom(shown),
    picture,
  };
}

/** Where zero of the slider lies along the part's axis. */
function placeFrom(shown: SetupScene): SetupModel['from'] {
  const { zero, sign } = shown.is === 'table' && shown.isUpright ? shown.frame.up : shown.frame.along;
  return { at: zero, sign };
}

function balanceRows(balance: NonNullable<SetupCheck['balance']>, unit: LengthUnit): SetupModel['balance'] {
  const { massKg, eccentricityMm, directionDeg, highestRpm, counterweightKg, counterweightRadiusMm } = balance;
  const rows: { readonly name: string; readonly value: string }[] = [
    { name: 'Turns with it', value: show(massKg, 'mass', unit) },
  ];
  if (!Number.isFinite(highestRpm)) return [...rows, { name: 'Off its axis', value: 'nothing' }];
  rows.push({
    name: 'Off its axis',
    value: `${show(eccentricityMm, 'length', unit)} at ${formatNumber((directionDeg + 360) % 360, 0)}°`,
  });
  rows.push({ name: 'No faster than', value: `${formatNumber(highestRpm, 0)} rpm` });
  if (counterweightKg !== undefined && counterweightRadiusMm !== undefined) {
    rows.push({
      name: 'Counterweight, opposite',
      value: `${show(counterweightKg, 'mass', unit)} at ${show(counterweightRadiusMm, 'length', unit)}`,
    });
  }
  return rows;
}
