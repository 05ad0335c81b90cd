import type { Pour } from '../build/pour.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import type { Figure } from './figure.ts';
import { type ReadPour, readPour } from './pour/read-pour.ts';

/** One thing that a further attempt does otherwise. */
export interface PourChange {
  /** Of the record, as unknown fields are named: `temperature`, `inserts/0/preheat`. */
  readonly field: string;
  readonly label: string;
  /** As written or chosen; empty = not said. */
  readonly from: string;
  readonly to: string;
  /** What the journal of the attempt before says was really done, where it differs from its plan. */
  readonly done: string | undefined;
}

/** Something that was done otherwise than planned. */
export interface Strayed {
  readonly field: string;
  readonly label: string;
  readonly planned: string;
  readonly done: string;
}

export interface PourChanges {
  readonly changes: readonly PourChange[];
  /** What was done otherwise than planned in the attempt before: no change of plan meets it. */
  readonly strayed: readonly Strayed[];
  /** What was to be changed, in the words of the journal; empty = it does not say. */
  readonly asked: string;
}

type Text = readonly [field: string, label: string, text: string, figure: Figure | undefined];

/**
 * In what an attempt differs from the one before: the plan of both, and what the first's journal says was really done. Quantities
 * that are only written otherwise (`730`, `730 °C`) are the same.
 *
 * @param nameOf of parts, bodies and machines
 */
export function changesSince(
  previous: Pour,
  pour: Pour,
  lengthUnit: LengthUnit,
  nameOf: (id: string) => string,
): PourChanges {
  const [before, after] = [previous, pour].map((one) => textsOf(one, readPour(one, lengthUnit), nameOf)) as [
    Text[],
    Text[],
  ];
  const done = doneOf(previous);
  const fields = [...new Set([...before, ...after].map(([field]) => field))];
  const changes = fields.flatMap((field): PourChange[] => {
    const a = before.find((one) => one[0] === field);
    const b = after.find((one) => one[0] === field);
    const from = a?.[2].trim() ?? '';
    const to = b?.[2].trim() ?? '';
    const isSame = a?.[3] && b?.[3] ? Math.abs(a[3].value - b[3].value) <= 1e-9 * Math.abs(a[3].value) : from === to;
    if (isSame) return [];
    const really = done.get(field.replace(/^inserts\/\d+\//, 'inserts/'));
    return [{ field, label: (b ?? a)![1], from, to, done: really && really !== from ? really : undefined }];
  });
  return { changes, strayed: strayedIn(previous, lengthUnit), asked: previous.journal?.change.trim() ?? '' };
}

function strayedIn(pour: Pour, lengthUnit: LengthUnit): readonly Strayed[] {
  const { temperature, ambient, journal } = readPour(pour, lengthUnit);
  const pairs = [
    [
      'temperature',
      'Pouring temperature',
      pour.temperature,
      pour.journal?.temperature,
      temperature,
      journal?.temperature,
    ],
    ['ambient', 'Temperature of the shop', pour.ambient, pour.journal?.ambient, ambient, journal?.ambient],
  ] as const;
  return pairs.flatMap(([field, label, planned, done, from, to]): Strayed[] =>
    from && to && done !== undefined && Math.abs(from.value - to.value) >= 0.5
      ? [{ field, label, planned: planned.trim(), done: done.trim() }]
      : [],
  );
}

/** What a journal says of planned fields. */
const doneOf = ({ journal }: Pour): ReadonlyMap<string, string> =>
  new Map(
    (
      [
        ['temperature', journal?.temperature],
        ['ambient', journal?.ambient],
        ['inserts/preheat', journal?.insertTemperature],
      ] as const
    ).flatMap(([field, text]) => (text && text.trim() !== '' ? [[field, text.trim()] as const] : [])),
  );

/** Castings go by their parts and not by their places, for which is first says nothing; risers and inserts by place. */
function textsOf(pour: Pour, read: ReadPour, nameOf: (id: string) => string): Text[] {
  const named = (id: string | undefined): string => (id === undefined ? '' : nameOf(id));
  const { gating } = pour;
  const sizes: Text[] = (
    [
      ['sprueHeight', 'Height of sprue'],
      ['sprueTop', 'Sprue at its top'],
      ['sprueFoot', 'Sprue at its foot'],
      ['runnerWidth', 'Width of runner'],
      ['runnerHeight', 'Height of runner'],
      ['runnerLength', 'Length of runner'],
      ['gateWidth', 'Width of gates'],
      ['gateHeight', 'Height of gates'],
      ['gateLength', 'Length of gates'],
    ] as const
  ).map(([key, label]): Text => [`gating/${key}`, label, gating[key], read.gating[key]]);
  return [
    ...pour.castings.flatMap(({ part, count, up, pattern }): Text[] => [
      [`castings/${part}/count`, `Number of ${named(part)}`, String(count), undefined],
      [`castings/${part}/up`, `Up of ${named(part)}`, up ?? '', undefined],
      [`castings/${part}/pattern`, `Pattern of ${named(part)}`, named(pattern), undefined],
    ]),
    ['alloy', 'Alloy', pour.alloy, undefined],
    ['furnace', 'Furnace', named(pour.furnace), undefined],
    ['crucible', 'Crucible', named(pour.crucible), undefined],
    ['flask', 'Flask', named(pour.flask), undefined],
    ['temperature', 'Pouring temperature', pour.temperature, read.temperature],
    ['ambient', 'Temperature of the shop', pour.ambient, read.ambient],
    ['gating/spot', 'Gate', gating.spot, undefined],
    ...sizes,
    ['gating/gates', 'Number of gates', String(gating.gates), undefined],
    ['gating/cupVolume', 'Cup', gating.cupVolume, read.gating.cup],
    ['gating/hollow', 'Sprue', gating.hollow ? 'hollow' : 'of foam', undefined],
    ...pour.risers.flatMap(({ name, on, diameter, height }, i): Text[] => [
      [`risers/${i}/on`, `${name || 'Riser'}: on`, named(on), undefined],
      [`risers/${i}/diameter`, `${name || 'Riser'}: diameter`, diameter, read.risers[i]?.diameter],
      [`risers/${i}/height`, `${name || 'Riser'}: height`, height, read.risers[i]?.height],
    ]),
    ...pour.inserts.flatMap(({ name, part, mass, material, preheat, length, around, stays }, i): Text[] => [
      [`inserts/${i}/part`, `${name}: part`, named(part), undefined],
      [`inserts/${i}/mass`, `${name}: mass`, mass, read.inserts[i]?.mass],
      [`inserts/${i}/material`, `${name}: material`, material, undefined],
      [`inserts/${i}/preheat`, `${name}: preheat`, preheat, read.inserts[i]?.preheat],
      [`inserts/${i}/length`, `${name}: length in the metal`, length, read.inserts[i]?.length],
      [`inserts/${i}/around`, `${name}: metal round it`, named(around), undefined],
      [`inserts/${i}/stays`, `${name}: stays`, stays ? 'cast in' : 'a chill', undefined],
    ]),
    ['overflow', 'Poured over', pour.overflow, read.overflow],
    ['loss', 'Melting loss', pour.loss, read.loss],
    ['heel', 'Left in the crucible', pour.heel, read.heel],
    ['copeWeight', 'Weights on the cope', pour.copeWeight, read.copeWeight],
    ['coverAbove', 'Sand above', pour.coverAbove, read.coverAbove],
    ['coverAround', 'Sand round about', pour.coverAround, read.coverAround],
    ['sandDensity', 'Density of the sand', pour.sandDensity, read.sandDensity],
  ];
}
