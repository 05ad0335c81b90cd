import fc from 'fast-check';
import type { CommandContext } from '../../src/shared/build/command.ts';
import { type CommandId, type Order, runCommand } from '../../src/shared/build/commands/registry.ts';
import { type Dimension, finishes, type Measure, sizeForms, sources } from '../../src/shared/build/dimension.ts';
import { buildOf, dimensionsOf, partsOf, stationsOf } from '../../src/shared/build/look-up.ts';
import { makes } from '../../src/shared/build/part.ts';
import type { Build } from '../../src/shared/build/records.ts';
import { defaultSettings } from '../../src/shared/build/settings.ts';
import { axes, stationForms } from '../../src/shared/build/station.ts';
import { createWorks } from '../../src/shared/check/create-works.ts';
import { figuresOf } from '../../src/shared/check/finding.ts';

/** A new build with nothing in it but its settings. */
export const emptyBuild = (): Build => buildOf([defaultSettings('random machine')]);

/** Ids in a row, and a clock that stands still: the same choices give the same build. */
export function countingContext(start = 0): CommandContext {
  let n = start;
  return { newId: (kind) => `${kind}:${(n++).toString().padStart(4, '0')}` as never, now: '2026-01-02T03:04:05Z' };
}

/** What an edit is made of: free numbers that choose among what the build holds at that moment. */
export interface Dice {
  readonly kind: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly text: string;
}

const names = ['bore', 'Bore', 'wall', 'height', 'wall thickness', 'ram'] as const;

/** Texts of values: good, bad, empty, and formulas over names that may or may not be there. */
const texts = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: -40, max: 200 }).map(String) },
  {
    weight: 5,
    arbitrary: fc.constantFrom('', '3/8', '1-3/8"', '12,5', '0.625', '25.4', '?', '1/0 mm', '2 * bore', 'wall + 3 mm'),
  },
  {
    weight: 4,
    arbitrary: fc.constantFrom(
      'bore of column',
      '"wall thickness" / 2',
      'bore of "guide column"',
      'hieght',
      'ram of ram',
    ),
  },
  { weight: 1, arbitrary: fc.constantFrom('M8', '30 deg', '-height', 'height - wall', '1e3', '5') },
);

export const dice: fc.Arbitrary<Dice> = fc.record({
  kind: fc.nat(99),
  a: fc.nat(9999),
  b: fc.nat(9999),
  c: fc.nat(9999),
  text: texts,
});

const pick = <T>(list: readonly T[], n: number): T | undefined => list[n % Math.max(1, list.length)];

/** The order that the dice come to in this build; undefined when there is nothing yet for it to act upon. */
export function orderOf(build: Build, { kind, a, b, c, text }: Dice): Order | undefined {
  const part = pick(partsOf(build), a);
  if (!part || kind < 6) {
    const partName = pick(['column', 'ram', 'guide column', 'base'], b);
    const set = { ...(partName ? { name: partName } : {}), make: pick(makes, c) ?? 'cast' };
    return { id: 'part-add', params: { set } };
  }
  const stations = stationsOf(build, part.id);
  const dimensions = dimensionsOf(build, part.id);
  const station = pick(stations, b);
  const dimension = pick(dimensions, b);
  const axis = pick(axes, c % 2) ?? 'Z';
  if (kind < 22 || stations.length < 2) {
    return {
      id: 'station-add',
      params: { part: part.id, axis, set: { name: `s${b % 12}`, form: pick(stationForms, c) ?? 'face' } },
    };
  }
  if (kind < 44 || !station || !dimension) {
    const measure = measureOf(build, part.id, b, c);
    const set = { value: text, source: pick(sources, b) ?? 'drawn', finish: pick(finishes, c) ?? 'machined' } as const;
    const name = pick(names, c);
    return { id: 'dimension-add', params: { part: part.id, measure, set: { ...set, ...(name ? { name } : {}) } } };
  }
  if (kind < 66) {
    const set: Partial<Dimension>[] = [
      { value: text },
      { limits: pick(['', '±0.1', '+0.2/-0', '±', '±0.001'], c) ?? '' },
      { name: pick(names, c) ?? 'bore' },
      { source: pick(sources, c) ?? 'drawn' },
      { measure: measureOf(build, part.id, b + 1, c) },
    ];
    return { id: 'dimension-set', params: { changes: [{ dimension: dimension.id, set: pick(set, a) ?? {} }] } };
  }
  if (kind < 70)
    return { id: 'station-set', params: { changes: [{ station: station.id, set: { name: `s${c % 12}` } }] } };
  if (kind < 73) return { id: 'station-remove', params: { stations: [station.id] } };
  if (kind < 76) return { id: 'dimension-remove', params: { dimensions: [dimension.id] } };
  if (kind < 78) return { id: 'part-remove', params: { parts: [part.id] } };
  if (kind < 81) return { id: 'datum-set', params: { station: station.id, datum: c % 3 > 0 } };
  if (kind < 84) return { id: 'dimension-move', params: { dimension: dimension.id, before: pick(dimensions, c)?.id } };
  if (kind < 86) return { id: 'station-move', params: { station: station.id, before: pick(stations, c)?.id } };
  if (kind < 88) return { id: 'part-move', params: { part: part.id, before: pick(partsOf(build), c)?.id } };
  if (kind < 92) {
    const sets = [
      { name: 'guide column' },
      { make: pick(makes, c) ?? 'cast' },
      { material: text },
      { name: 'ram' },
    ] as const;
    return { id: 'part-set', params: { part: part.id, set: pick(sets, b) ?? {} } };
  }
  if (kind < 94) {
    const sets = [{ lengthUnit: c % 2 ? 'mm' : 'in' }, { castingGrade: 1 + (c % 16) }, { name: 'renamed' }] as const;
    return { id: 'settings-set', params: { set: pick(sets, b) ?? {}, keepSizes: c % 3 === 0 } };
  }
  if (kind < 97) {
    const rows = [
      { dimension: dimension.id, cells: { value: text } },
      { dimension: undefined, cells: { value: text } },
    ];
    return { id: 'cells-set', params: { part: part.id, rows } };
  }
  const finding = pick(createWorks(build).findings(), b);
  if (!finding) return undefined;
  if (finding.accepted && c % 2) return { id: 'acceptance-withdraw', params: { acceptance: finding.accepted.id } };
  const figures = c % 5 === 0 ? 'other figures' : figuresOf(finding.data);
  return { id: 'finding-accept', params: { rule: finding.rule, finding: finding.key, figures, reason: 'as agreed' } };
}

function measureOf(build: Build, part: Parameters<typeof stationsOf>[1], b: number, c: number): Measure {
  const along = stationsOf(build, part, pick(axes, c % 2));
  const from = pick(along, b);
  const to = pick(along, b + 1 + (c % 3));
  if (c % 4 === 0 || !from || !to || from.id === to.id) return { type: 'size', form: pick(sizeForms, b) ?? 'length' };
  return { type: 'between', from: from.id, to: to.id };
}

/** Carries out an order; a refusal (which random edits earn at times) is undefined. */
export function tryOrder(build: Build, order: Order, context: CommandContext) {
  const result = runCommand(build, order.id as CommandId, order.params as never, context);
  return result.ok ? result.value : undefined;
}
