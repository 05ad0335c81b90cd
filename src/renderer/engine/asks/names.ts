import type { PartId } from '../../../shared/base/ids.ts';
import { kindOfMeasure } from '../../../shared/build/kind-of-measure.ts';
import { nameKey } from '../../../shared/formula/name-key.ts';
import { show } from '../show.ts';
import type { Ask } from '../view.ts';

export interface NameOffer {
  /** What is put into the formula, quoted where it must be. */
  readonly insert: string;
  readonly value: string;
}

const OFFERS = 8;
const BARE = /^[A-Za-z][A-Za-z0-9_]*$/;

/** A name as a formula writes it: quoted unless it can stand bare. */
const inFormula = (name: string): string => (BARE.test(name) ? name : `"${name}"`);

/** Names of dimensions that begin with (or have a word that begins with) what is typed: this part's first. */
export const namesAsk: Ask<{ readonly part: PartId; readonly typed: string }, readonly NameOffer[]> = (
  scene,
  { part, typed },
) => {
  const wanted = nameKey(typed.replaceAll('"', ''));
  if (wanted === '') return [];
  const unit = scene.index.settings().lengthUnit;
  const begins = (name: string) => {
    const key = nameKey(name);
    return key.startsWith(wanted) || key.includes(` ${wanted}`);
  };
  const offers: NameOffer[] = [];
  const others = scene.index.parts().filter((other) => other.id !== part);
  for (const home of [part, ...others.map((other) => other.id)]) {
    const partName = scene.index.part(home)?.name ?? '';
    for (const dimension of scene.index.dimensionsOf(home)) {
      if (!begins(dimension.name) && !(home !== part && begins(`${dimension.name} of ${partName}`))) continue;
      const { value } = scene.works.drawing.dimension(dimension.id);
      offers.push({
        insert: home === part ? inFormula(dimension.name) : `${inFormula(dimension.name)} of ${inFormula(partName)}`,
        value: value === undefined ? 'no value' : show(value, kindOfMeasure(dimension.measure), unit),
      });
      if (offers.length >= OFFERS) return offers;
    }
  }
  return offers;
};
