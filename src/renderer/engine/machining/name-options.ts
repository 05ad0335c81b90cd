import type { PartId } from '../../../shared/base/ids.ts';
import { servesAs } from '../../../shared/build/body-uses.ts';
import { kindOfMeasure } from '../../../shared/build/kind-of-measure.ts';
import { show } from '../show.ts';
import type { Scene } from '../view.ts';
import type { NameOption } from './models.ts';

/** The stations of a part by name, each with its axis and place. */
export function stationOptions({ index, works }: Scene, part: PartId): readonly NameOption[] {
  const unit = index.settings().lengthUnit;
  const places = new Map(
    works.drawing
      .axesOf(part)
      .flatMap(({ stations, datum }) =>
        datum === undefined ? [] : stations.filter(({ group }) => group === 0).map(({ id, at }) => [id, at] as const),
      ),
  );
  return index.stationsOf(part).map(({ id, name, axis }) => {
    const at = places.get(id);
    return {
      id,
      name,
      axis,
      aside: at === undefined ? `${axis}, no place yet` : `${axis} ${show(at, 'length', unit)}`,
    };
  });
}

/** The dimensions of a part that can be the size of something round, or a length. */
export function sizeOptions({ index, works }: Scene, part: PartId): readonly NameOption[] {
  const unit = index.settings().lengthUnit;
  return index
    .dimensionsOf(part)
    .filter(({ measure }) => servesAs(measure, 'diameter') || servesAs(measure, 'length'))
    .map(({ id, name, measure }) => {
      const { value } = works.drawing.dimension(id);
      const aside = value === undefined ? 'no value' : show(value, kindOfMeasure(measure), unit);
      return { id, name, axis: undefined, aside };
    });
}
