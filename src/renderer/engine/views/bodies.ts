import type { DimensionId, PartId, StationId } from '../../../shared/base/ids.ts';
import type { Body } from '../../../shared/build/body.ts';
import { usesOf } from '../../../shared/build/body-uses.ts';
import type { Severity } from '../../../shared/check/rule.ts';
import type { PlacedBody } from '../../../shared/solid/placed.ts';
import { bodyProblemWords, extentWords, meshFaultWords, shapeWords } from '../body-words.ts';
import { defineView, type Scene } from '../view.ts';
import { marksOf } from './part.ts';

/** A body as the list of bodies shows it. */
export interface BodyRow {
  readonly record: Body;
  readonly shape: string;
  /** Over all, with its copies; undefined while it is not placed. */
  readonly extent: string | undefined;
  readonly copies: number;
  /** What it lacks, or why it cannot be, in words. */
  readonly problem: string | undefined;
  /** The part would be the same without it. */
  readonly idle: boolean;
  readonly mark: Severity | undefined;
  /** Stations and dimensions that it hangs on directly. */
  readonly on: readonly (StationId | DimensionId)[];
  /** What stands in its fields, by name: `shape/ends/0` → `foot`. */
  readonly fields: Readonly<Record<string, string>>;
}

/** The bodies of a part in the order in which they act. Undefined when the part is not there any more. */
export const bodiesView = defineView<{ readonly part: PartId }, readonly BodyRow[] | undefined>({
  ofSolid: true,
  open: () => {
    let rows = new Map<string, { readonly from: readonly unknown[]; readonly row: BodyRow }>();
    return (scene, { part }) => {
      if (scene.index.part(part) === undefined) return undefined;
      const marks = marksOf(scene.works.findingsOf(part));
      const unit = scene.index.settings().lengthUnit;
      const idle = new Set(scene.solids.latestOf(part)?.idle);
      const refused = new Map(scene.solids.refusedOf(part).map(({ body, why }) => [body, why]));
      const names = [scene.index.stationsOf(part), scene.index.dimensionsOf(part)];
      const next: typeof rows = new Map();
      const list = scene.solids.bodiesOf(part).map((placed) => {
        const { id } = placed.record;
        const why = refused.get(id);
        const from = [placed, marks.get(id), unit, idle.has(id), why, ...names];
        const known = rows.get(id);
        if (known?.from.every((value, i) => value === from[i])) {
          next.set(id, known);
          return known.row;
        }
        const row: BodyRow = {
          record: placed.record,
          shape: shapeWords[placed.record.shape.type],
          extent: extentWords(placed, unit),
          copies: placed.moves.length,
          problem: why === undefined ? problemOf(scene, placed) : meshFaultWords[why],
          idle: idle.has(id),
          mark: marks.get(id),
          on: [...placed.stations, ...placed.dimensions],
          fields: fieldsOf(scene, placed.record),
        };
        next.set(id, { from, row });
        return row;
      });
      rows = next;
      return list;
    };
  },
});

const nameIn =
  (scene: Scene) =>
  (id: StationId | DimensionId): string =>
    scene.index.station(id as StationId)?.name ?? scene.index.dimension(id as DimensionId)?.name ?? 'something removed';

const problemOf = (scene: Scene, { problem }: PlacedBody): string | undefined =>
  problem === undefined ? undefined : bodyProblemWords(problem, nameIn(scene));

function fieldsOf(scene: Scene, body: Body): Readonly<Record<string, string>> {
  const { stations, sizes } = usesOf(body);
  const name = nameIn(scene);
  return Object.fromEntries([
    ...stations.map(({ station, field }) => [field, name(station)]),
    ...sizes.map(({ dimension, field }) => [field, name(dimension)]),
  ]);
}
