import type { BodyId, PartId } from '../../base/ids.ts';
import type { Insert } from '../../build/pour.ts';
import { boundsOf } from '../../solid/bounds.ts';
import { exactSurface, exactVolume } from '../../solid/exact-volume.ts';
import type { PlacedBody, Vec3 } from '../../solid/placed.ts';
import { foundryPractice, insertHeatOf } from '../../tables/foundry-practice.ts';
import { drawn, type Figure, fromTable, worked } from '../figure.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';
import type { CastingInput, PourInput } from '../pour-input.ts';
import { massOf } from './charge-check.ts';
import type { PourAlloy } from './pour-alloy.ts';
import type { ReadPour } from './read-pour.ts';

/** An insert and the metal round it, whatever their temperatures. */
export interface InsertMasses {
  readonly insert: number;
  readonly record: Insert;
  /** The casting that it lies in, and where in it the middle of the metal round it is. */
  readonly part: PartId | undefined;
  readonly around: BodyId | undefined;
  readonly at: Vec3 | undefined;
  readonly material: string;
  readonly mass: Figure | undefined;
  readonly heat: Figure | undefined;
  readonly preheat: Figure | undefined;
  /** Modulus of the body round it. */
  readonly modulus: Figure | undefined;
  readonly metal: Figure | undefined;
  readonly unknown: readonly FoundryUnknown[];
}

/** What each insert weighs, what it takes up, and how much metal lies round it. */
export const insertMasses = (
  input: PourInput,
  read: ReadPour,
  alloy: PourAlloy | undefined,
  ambient: Figure,
): readonly InsertMasses[] =>
  input.pour.inserts.map((record, insert) => {
    const unknown: FoundryUnknown[] = [];
    const texts = read.inserts[insert]!;
    const field = (name: string): FoundryUnknown => ({ is: 'field', field: `inserts/${insert}/${name}` });
    const own = record.part === undefined ? undefined : input.insertOf(record.part);
    const material = record.material.trim() || (own?.part.material.trim() ?? '');
    const size = own?.solid && sizeOf(own.solid, texts.length);
    const density = input.materialNamed(material)?.densityKgM3;
    if (size && density === undefined)
      unknown.push(material === '' ? field('material') : { is: 'material', name: material });
    if (record.part !== undefined && !size && !texts.mass) unknown.push({ is: 'solid', part: record.part });
    if (record.part === undefined && !texts.mass) unknown.push(field('mass'));
    const heatRow = insertHeatOf(material);
    if (!heatRow) unknown.push(material === '' ? field('material') : { is: 'material', name: material });
    const bySolid =
      size && density !== undefined
        ? drawn(
            size.volumeMm3 * density * 1e-9,
            'kg',
            `its solid${texts.length ? ', as far as it lies in the metal,' : ''} by the density of ${material}`,
          )
        : undefined;
    const found = record.around === undefined ? undefined : bodyIn(input, record.around);
    if (!found) unknown.push(record.around === undefined ? field('around') : { is: 'body', body: record.around });
    const metal = found && metalRound(found.casting, found.body, size);
    if (found && !metal) unknown.push({ is: 'body', body: found.body.record.id });
    return {
      insert,
      record,
      part: found?.casting.part.id,
      around: record.around,
      at: found && middleOf(found.body),
      material,
      mass: bySolid ?? texts.mass,
      heat: heatRow && fromTable(heatRow, ''),
      preheat: texts.preheat ?? { ...ambient, origin: 'as cold as the shop' },
      modulus: metal?.modulus,
      metal: massOf(metal?.volume, alloy?.figure('solidDensityKgM3')),
      unknown,
    };
  });

/** What of an insert lies in the metal: taken as a round bar along its longest side. */
interface InsertSize {
  readonly lengthMm: number;
  readonly diameterMm: number;
  readonly volumeMm3: number;
}

function sizeOf(
  {
    volumeMm3,
    box: { min, max },
  }: { readonly volumeMm3: number; readonly box: { readonly min: Vec3; readonly max: Vec3 } },
  length: Figure | undefined,
): InsertSize {
  const longest = Math.max(...[0, 1, 2].map((k) => max[k]! - min[k]!));
  const section = volumeMm3 / longest;
  const lengthMm = Math.min(longest, length?.value ?? longest);
  return { lengthMm, diameterMm: Math.sqrt((4 * section) / Math.PI), volumeMm3: section * lengthMm };
}

function bodyIn(
  input: PourInput,
  body: BodyId,
): { readonly casting: CastingInput; readonly body: PlacedBody } | undefined {
  for (const { part } of input.pour.castings) {
    const casting = input.castingOf(part);
    const found = casting?.bodies.find(({ record }) => record.id === body);
    if (casting && found) return { casting, body: found };
  }
  return undefined;
}

function middleOf(body: PlacedBody): Vec3 | undefined {
  const box = boundsOf({ shape: body.shape, moves: body.moves.slice(0, 1) });
  return box && ([0, 1, 2].map((k) => (box.min[k]! + box.max[k]!) / 2) as unknown as Vec3);
}

/** A body that is drawn with its bore has no metal where the insert lies. */
const isDrawnHollow = ({ record, shape }: PlacedBody): boolean =>
  (record.shape.type === 'cylinder' && record.shape.bore !== undefined) ||
  (shape?.is === 'turned' && shape.outline.every(({ r }) => r > 0));

/**
 * Metal of the body within the thickness of a wall of its modulus about the insert, and never more than the body has. Of an
 * insert whose shape is not known all of the body counts.
 */
function metalRound(
  { sections }: CastingInput,
  body: PlacedBody,
  size: InsertSize | undefined,
): { readonly modulus: Figure; readonly volume: Figure | undefined } | undefined {
  if (!body.shape) return undefined;
  const whole = exactVolume(body.shape);
  const section = sections?.bodies.find((one) => one.body === body.record.id);
  const modulus = section
    ? drawn(section.usualMm, 'mm', 'under half of its surface')
    : drawn(whole / exactSurface(body.shape), 'mm', 'volume by surface of the body by itself');
  const there = isDrawnHollow(body) ? whole : whole - (size?.volumeMm3 ?? 0);
  if (!(there > 0)) return { modulus, volume: undefined };
  const all = drawn(
    there,
    'mm³',
    size ? 'all of the body but the insert' : 'all of the body: the shape of the insert is not known',
  );
  if (!size) return { modulus, volume: all };
  const { insertReach } = foundryPractice;
  const ring = worked('mm³', insertReach.source, [modulus, fromTable(insertReach, '')], (m, moduli) => {
    const outer = size.diameterMm + 2 * moduli * m;
    return (Math.PI / 4) * (outer ** 2 - size.diameterMm ** 2) * size.lengthMm;
  });
  return { modulus, volume: ring && ring.value < there ? ring : all };
}
