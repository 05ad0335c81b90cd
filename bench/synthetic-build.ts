import type { DimensionId, PartId, StationId } from '../src/shared/base/ids.ts';
import { type Dimension, defaultDimension } from '../src/shared/build/dimension.ts';
import { defaultPart } from '../src/shared/build/part.ts';
import type { Build, BuildRecord, RecordId } from '../src/shared/build/records.ts';
import { defaultSettings } from '../src/shared/build/settings.ts';
import { defaultStation } from '../src/shared/build/station.ts';

/** How many dimensions a synthetic part has: two axes of stations and the sizes of its bores and walls. */
export const DIMENSIONS_PER_PART = 20;

/** A dimension in the form that spreadsheets and expression libraries can take too. */
export interface PlainDimension {
  readonly record: Dimension;
  /** The value in mm, or the indices of the dimensions that the formula names, with the text between them. */
  readonly number: number | undefined;
  readonly operands: readonly number[];
  /** The formula with `{0}`, `{1}`, … for its operands, lengths as bare mm. */
  readonly formula: string | undefined;
  /** Along its axis: index of the dimension before it in the chain, if it is one of a chain. */
  readonly after: number | undefined;
}

export interface Synthetic {
  readonly build: Build;
  readonly dimensions: readonly PlainDimension[];
}

/**
 * A build of `count` dimensions: parts with two axes of six and five stations in chains and trees, one redundant loop in
 * each part, mixed mm and inch, 30 % formulas, a third of those naming another part. The same every time.
 */
export function syntheticBuild(count: number): Synthetic {
  const records: BuildRecord[] = [defaultSettings('synthetic')];
  const dimensions: PlainDimension[] = [];
  for (let p = 0; p * DIMENSIONS_PER_PART < count; p++) addPart(p, records, dimensions);
  // As they would come from a file: put together, an id would be a text in pieces, which the engine reads more slowly.
  const read = JSON.parse(JSON.stringify(records)) as BuildRecord[];
  const build = new Map<RecordId, BuildRecord>(read.map((record) => [record.id, record]));
  return {
    build,
    dimensions: dimensions.map((plain) => ({ ...plain, record: build.get(plain.record.id) as Dimension })),
  };
}

const id = (kind: string, n: number): string => `${kind}:${n.toString(32).padStart(10, '0')}`;

function addPart(p: number, records: BuildRecord[], dimensions: PlainDimension[]): void {
  const part = id('part', p) as PartId;
  records.push(defaultPart(part, `item ${p}`, p));
  const station = (i: number): StationId => id('station', p * 11 + i) as StationId;
  for (let i = 0; i < 11; i++) {
    const axis = i < 6 ? 'X' : 'Z';
    records.push({ ...defaultStation(station(i), part, axis, `s${i}`, i), datum: i === 0 || i === 6 });
  }
  const base = p * DIMENSIONS_PER_PART;
  const add = (fields: Partial<Dimension>, plain: Partial<PlainDimension>): void => {
    const n = dimensions.length;
    const k = n - base;
    const measure = fields.measure ?? { type: 'size', form: k % 3 === 0 ? 'length' : 'diameter' };
    const record: Dimension = {
      ...defaultDimension(id('dimension', n) as DimensionId, part, `d${k}`, measure, k),
      ...fields,
    };
    records.push(record);
    dimensions.push({ record, number: undefined, operands: [], formula: undefined, after: undefined, ...plain });
  };
  // Sizes d0 to d9: plain figures in mm and inch, and four formulas.
  for (let k = 0; k < 10; k++) {
    if (k % 3 === 2 && k < 8) {
      add(
        { value: `d${k - 1} + 2 * d${k - 2} - 3 mm` },
        { operands: [base + k - 1, base + k - 2], formula: '{0}+2*{1}-3' },
      );
    } else if (k === 9 && p > 0) {
      const other = base - DIMENSIONS_PER_PART;
      add({ value: `d0 of "item ${p - 1}" / 2 + d1` }, { operands: [other, base + 1], formula: '{0}/2+{1}' });
    } else if (k === 4) {
      add({ value: '1-3/8"', limits: '±0.005"' }, { number: 34.925 });
    } else {
      const number = 6 + ((p * 7 + k * 13) % 90) / 2;
      add({ value: String(number), limits: k % 2 === 0 ? '±0.1' : '' }, { number });
    }
  }
  // d10 to d14: a chain along X, its overall length d15 closing a loop; d16 to d19: a tree along Z.
  const lengths = [12, 30, 7.5, 44, 18];
  for (let k = 0; k < 5; k++) {
    const measure = { type: 'between', from: station(k), to: station(k + 1) } as const;
    add({ measure, value: String(lengths[k]!) }, { number: lengths[k]!, after: k > 0 ? base + 9 + k : undefined });
  }
  add(
    { measure: { type: 'between', from: station(0), to: station(5) }, value: '111.5', limits: '±0.5' },
    { number: 111.5 },
  );
  for (let k = 0; k < 4; k++) {
    const measure = { type: 'between', from: station(k < 2 ? 6 : 7), to: station(7 + k) } as const;
    if (k === 0) add({ measure, value: '25' }, { number: 25 });
    else if (p > 0 && k === 3) {
      const other = base - DIMENSIONS_PER_PART + 10;
      const value = `d10 of "item ${p - 1}" + d0`;
      add({ measure, value }, { operands: [other, base], formula: '{0}+{1}', after: base + 16 });
    } else {
      const value = `2 * d${k} + 1 mm`;
      add({ measure, value }, { operands: [base + k], formula: '2*{0}+1', after: k < 2 ? undefined : base + 16 });
    }
  }
}
