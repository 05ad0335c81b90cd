import type { PartId } from '../../../shared/base/ids.ts';
import { type BuildHoleLine, type HoleLine, holeSchedule } from '../../../shared/machining/route/hole-schedule.ts';
import { formatQuantity } from '../../../shared/quantity/format.ts';
import { nameOfId } from '../machining/reason-words.ts';
import type { HoleRow, HolesModel } from '../machining/route-models.ts';
import { unknownRow } from '../machining/unknown-words.ts';
import { defineView, type Scene } from '../view.ts';

/** The holes of a part, and of the build, by size, with the drills that make them. */
export const holesView = defineView<{ readonly part: PartId }, HolesModel>({
  late: true,
  open: () => {
    let last: { readonly from: readonly unknown[]; readonly model: HolesModel } | undefined;
    return (scene, { part }) => {
      const facts = scene.index.parts().flatMap(({ id }) => scene.works.factsOf(id) ?? []);
      const from = facts.flatMap((one) => [one.part, one.bodies, one.dimensions, one.axes, one.operations]);
      if (last?.from.length === from.length && last.from.every((value, i) => value === from[i])) return last.model;
      const schedule = holeSchedule(
        facts.map((one) => ({ ...one, operations: one.operations.map(({ record }) => record) })),
      );
      const own = schedule.parts.find((one) => one.part.id === part)?.lines ?? [];
      last = {
        from,
        model: {
          ofPart: own.map((line) => partRow(scene, line)),
          ofBuild: schedule.build.map((line) => buildRow(scene, line)),
          unknown: schedule.unknown
            .filter((one) => one.part === part)
            .map(({ body }) => unknownRow(scene, part, { is: 'body', body })),
        },
      };
      return last.model;
    };
  },
});

const words = ({ index }: Scene, mm: number): string =>
  formatQuantity(mm, 'length', { unit: index.settings().lengthUnit });

function partRow(scene: Scene, line: HoleLine): HoleRow {
  const { counterbore, countersink, depthMm, bodies } = line;
  const more: string[] = [];
  if (counterbore !== undefined) {
    const { diameterMm, depthMm: deep } = counterbore;
    more.push(
      `counterbore ø ${diameterMm === undefined ? '?' : words(scene, diameterMm)}, ${deep === undefined ? '?' : words(scene, deep)} deep`,
    );
  }
  if (countersink?.diameterMm !== undefined) more.push(`countersink to ø ${words(scene, countersink.diameterMm)}`);
  return {
    ...sizeRow(scene, line),
    key: bodies.join(' '),
    depth: depthMm === undefined ? 'not known' : words(scene, depthMm),
    more: [...more, ...clearWords(line)].join('; '),
    where: bodies.map((id) => nameOfId(scene, id)).join(', '),
  };
}

function buildRow(scene: Scene, line: BuildHoleLine): HoleRow {
  return {
    ...sizeRow(scene, line),
    key: `${line.thread} ${line.diameterMm} ${line.opened}`,
    depth: '',
    more: clearWords(line).join('; '),
    where: line.parts.map((id) => scene.index.part(id)?.name ?? '').join(', '),
  };
}

function sizeRow(scene: Scene, line: HoleLine | BuildHoleLine): Omit<HoleRow, 'key' | 'depth' | 'more' | 'where'> {
  const { thread, diameterMm, opened, drill, reamedFor, count } = line;
  const best = drill?.best;
  const with_ = best === undefined ? undefined : `drill ${best.name}`;
  const other = best !== undefined && drill?.metric === best ? drill.inch : drill?.metric;
  const openedWords =
    opened === 'cored'
      ? 'cored'
      : opened === 'bored'
        ? 'bored to size'
        : opened === 'reamed'
          ? `${with_ ?? `drill ${words(scene, drill?.wantedMm ?? diameterMm)}`}, then ream`
          : `${with_ ?? `drill ${words(scene, drill?.wantedMm ?? diameterMm)}`}${thread === '' ? '' : ', then tap'}`;
  const sources = [
    drill?.table?.source ?? best?.source,
    reamedFor === 'limits' ? 'reamed: its limits are narrower than IT8' : undefined,
  ];
  return {
    size: thread === '' ? `ø ${words(scene, diameterMm)}` : thread,
    count,
    opened: openedWords,
    instead: other === undefined ? '' : other.name,
    source: sources.filter((one) => one !== undefined).join('; '),
  };
}

const clearWords = ({ clears }: HoleLine | BuildHoleLine): readonly string[] =>
  clears.map(({ screw, hole }) => `clears ${screw}, ${hole.fit}`);
