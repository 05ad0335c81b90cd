import type { PartId } from '../../../shared/base/ids.ts';
import { formatNumber } from '../../../shared/quantity/format.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';
import type { MassProperties, PartState } from '../../../shared/solid/placed.ts';
import type { PartFigures } from '../../../shared/solid/solids.ts';
import { materialNamed } from '../../../shared/tables/materials.ts';
import { bareLength, boxWords } from '../body-words.ts';
import { show } from '../show.ts';
import { defineView, type Scene } from '../view.ts';

/** One figure of a solid with its name, as shown. */
export interface SolidFigure {
  readonly name: string;
  readonly value: string;
  /** It says what is missing for it instead of a figure. */
  readonly warns?: true;
}

/** How the solid of a part stands. */
export type SolidState = 'no bodies' | 'none placed' | 'working' | 'made' | 'nothing left' | 'no kernel';

export interface SolidModel {
  readonly is: SolidState;
  /** Goes up whenever the picture may have changed: then it is asked for anew. 0: there is none. */
  readonly picture: number;
  /** Whether what is shown is what the drawing says now, or what it said a moment ago. */
  readonly fresh: boolean;
  /** Whether the two states differ. */
  readonly hasMachined: boolean;
  readonly figures: Readonly<Record<PartState, readonly SolidFigure[]>>;
  /** Bodies that have no solid. */
  readonly missing: number;
}

const noFigures: SolidModel['figures'] = { 'as cast': [], finished: [] };

/** The solid of a part: its figures, and when to fetch its picture. Undefined when the part is not there any more. */
export const solidView = defineView<{ readonly part: PartId }, SolidModel | undefined>({
  ofSolid: true,
  open: () => {
    let pictured: readonly unknown[] = [];
    let picture = 0;
    let figures = noFigures;
    let behind: readonly unknown[] = [];
    return (scene, { part }) => {
      if (scene.index.part(part) === undefined) return undefined;
      const bodies = scene.solids.bodiesOf(part);
      // Live figures and a coarse picture at once, the measured ones in their place a moment later.
      const solid = scene.solids.figuresOf(part);
      const from = [solid, scene.index.part(part)?.material, scene.index.settings(), scene.index.materials()];
      if (solid !== undefined) {
        if (pictured[0] !== bodies || pictured[1] !== solid.level) picture++;
        pictured = [bodies, solid.level];
        if (!from.every((value, i) => value === behind[i])) figures = figuresOf(scene, part, solid);
        behind = from;
      }
      const state = stateOf(scene, part, solid);
      const gone = state !== 'made' && state !== 'working';
      return {
        is: state,
        picture: gone ? 0 : picture,
        fresh: solid !== undefined,
        hasMachined: bodies.some(({ record, shape }) => shape && record.finish === 'machined'),
        figures: gone ? noFigures : figures,
        missing: bodies.filter(({ shape }) => !shape).length,
      };
    };
  },
});

function stateOf(scene: Scene, part: PartId, solid: PartFigures | undefined): SolidState {
  const bodies = scene.solids.bodiesOf(part);
  if (bodies.length === 0) return 'no bodies';
  if (solid !== undefined) return 'made';
  if (!bodies.some(({ shape }) => shape)) return 'none placed';
  if (scene.kernel === 'failed') return 'no kernel';
  return scene.kernel !== 'there' || scene.solids.pending().includes(part) ? 'working' : 'nothing left';
}

function figuresOf(scene: Scene, part: PartId, { finished, asCast }: PartFigures): SolidModel['figures'] {
  const ofFinished = figuresFor(scene, part, finished);
  return { finished: ofFinished, 'as cast': asCast === finished ? ofFinished : figuresFor(scene, part, asCast) };
}

function figuresFor(scene: Scene, part: PartId, of: MassProperties): readonly SolidFigure[] {
  const unit = scene.index.settings().lengthUnit;
  // Sums of float64 leave dust of a millionth of a millimetre.
  const centre = of.centre.map((at) => bareLength(Math.abs(at) < 1e-6 ? 0 : at, unit));
  return [
    massOf(scene, part, of),
    { name: 'Volume', value: volumeWords(of.volumeMm3, unit) },
    { name: 'Surface', value: surfaceWords(of.areaMm2, unit) },
    { name: 'Box', value: boxWords(of.boxMin, of.boxMax, unit) },
    { name: 'Centre', value: `${centre.join(', ')} ${unit}` },
    ...(of.pieces > 1 ? [{ name: 'Pieces', value: String(of.pieces) }] : []),
  ];
}

/** Without a density there is no mass: nothing is taken for granted. */
function massOf(scene: Scene, part: PartId, { volumeMm3 }: MassProperties): SolidFigure {
  const material = scene.index.part(part)?.material ?? '';
  if (material === '') return { name: 'Mass', value: 'no material yet', warns: true };
  const density = materialNamed(material, scene.index.materials())?.densityKgM3;
  if (density === undefined) return { name: 'Mass', value: 'density not known', warns: true };
  return { name: 'Mass', value: show(volumeMm3 * 1e-9 * density, 'mass', scene.index.settings().lengthUnit) };
}

/** Castings are weighed and poured by the cubic centimetre, or the cubic inch. */
const volumeWords = (mm3: number, unit: LengthUnit): string =>
  unit === 'in' ? `${formatNumber(mm3 / 25.4 ** 3, 3)} in³` : `${formatNumber(mm3 / 1000, 3)} cm³`;

const surfaceWords = (mm2: number, unit: LengthUnit): string =>
  unit === 'in' ? `${formatNumber(mm2 / 25.4 ** 2, 2)} in²` : `${formatNumber(mm2 / 100, 2)} cm²`;
