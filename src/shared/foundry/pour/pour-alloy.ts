import { type Alloy, type AlloyFamily, type AlloyKey, alloyNamed } from '../../tables/alloys.ts';
import { type Figure, type FigureUnit, fromTable } from '../figure.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';
import type { Thermal } from '../heat.ts';
import type { PourInput } from '../pour-input.ts';

/** What is poured, its figures asked for where they are needed. */
export interface PourAlloy {
  readonly name: string;
  readonly family: AlloyFamily;
  readonly alloy: Alloy;
  /** Undefined where the alloy has no such figure; then it is noted as unknown. */
  figure(key: AlloyKey): Figure | undefined;
  /** The same, without noting. */
  ifKnown(key: AlloyKey): Figure | undefined;
  /** Melting points, latent heat and heat capacities, with the figures that they are; undefined where one is unknown. */
  thermal(): { readonly thermal: Thermal; readonly from: readonly Figure[] } | undefined;
}

const units: Readonly<Partial<Record<AlloyKey, FigureUnit>>> = {
  solidusC: '°C',
  liquidusC: '°C',
  latentKJKg: 'kJ/kg',
  solidDensityKgM3: 'kg/m³',
  liquidDensityKgM3: 'kg/m³',
  contractionLeast: '%',
  contractionUsual: '%',
  contractionMost: '%',
  freezingShrinkage: '%',
  pourLeastC: '°C',
  pourMostC: '°C',
  meltLoss: '%',
};

/** By its own name, else the material of the first casting. */
export const alloyNameOf = ({ pour, castingOf }: Pick<PourInput, 'pour' | 'castingOf'>): string =>
  pour.alloy.trim() !== ''
    ? pour.alloy.trim()
    : (pour.castings.map(({ part }) => castingOf(part)?.part.material.trim() ?? '').find((name) => name !== '') ?? '');

/** @returns undefined, noted as unknown, where neither table nor build knows the alloy. */
export function pourAlloy(input: PourInput, unknown: FoundryUnknown[]): PourAlloy | undefined {
  const name = alloyNameOf(input);
  const alloy = name === '' ? undefined : alloyNamed<Alloy>(name, input.alloys);
  if (!alloy) {
    unknown.push({ is: 'alloy', name });
    return undefined;
  }
  const ifKnown = (key: AlloyKey): Figure | undefined => {
    const figure = alloy.figures[key];
    return figure && fromTable(figure, units[key] ?? '');
  };
  const figure = (key: AlloyKey): Figure | undefined => {
    const found = ifKnown(key);
    if (!found) unknown.push({ is: 'alloy figure', alloy: alloy.name, key });
    return found;
  };
  return {
    name: alloy.name,
    family: alloy.family,
    alloy,
    figure,
    ifKnown,
    thermal() {
      const from = (['solidusC', 'liquidusC', 'latentKJKg', 'solidHeatKJKgK', 'liquidHeatKJKgK'] as const).map(figure);
      const [solidus, liquidus, latent, solid, liquid] = from;
      if (!solidus || !liquidus || !latent || !solid || !liquid) return undefined;
      const thermal: Thermal = {
        solidusC: Math.min(solidus.value, liquidus.value),
        liquidusC: liquidus.value,
        latentKJKg: latent.value,
        solidHeatKJKgK: solid.value,
        liquidHeatKJKgK: liquid.value,
      };
      return { thermal, from: [solidus, liquidus, latent, solid, liquid] };
    },
  };
}
