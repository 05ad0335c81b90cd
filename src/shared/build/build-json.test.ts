import { describe, expect, test } from 'vitest';
import type { DimensionId, PartId, StationId } from '../base/ids.ts';
import { BUILD_VERSION } from './build-document.ts';
import { parseBuildJson, writeBuildJson } from './build-json.ts';
import { defaultDimension } from './dimension.ts';
import { findJsonFault } from './json-place.ts';
import { defaultPart } from './part.ts';
import type { BuildRecord } from './records.ts';
import { defaultSettings } from './settings.ts';
import { defaultStation } from './station.ts';

const part = 'part:column' as PartId;
const foot = 'station:foot' as StationId;
const top = 'station:top' as StationId;
const records: readonly BuildRecord[] = [
  defaultDimension('dimension:height' as DimensionId, part, 'height', { to: top, from: foot, type: 'between' }, 1),
  defaultStation(top, part, 'Z', 'top', 2),
  { ...defaultStation(foot, part, 'Z', 'foot', 1), datum: true },
  defaultPart(part, 'guide column', 1),
  defaultSettings('bench machine'),
];
const document = (over: object): string =>
  JSON.stringify({ format: 'waywright-build', version: 1, records: [defaultSettings('m')], issues: [], ...over });
const placesOf = (text: string) => {
  const read = parseBuildJson(text);
  return read.ok ? [] : read.error.map(({ code, place }) => `${code} ${place}`);
};

describe('the JSON form of a build', () => {
  test('comes back whole, in file order, whatever order it was given in', () => {
    const text = writeBuildJson({ records, issues: [] });
    expect(text).toBe(writeBuildJson({ records: [...records].reverse(), issues: [] }));
    const read = parseBuildJson(text);
    expect(read).toEqual({ ok: true, value: { records: [...records].reverse(), issues: [] } });
    expect(text.split('\n').filter((line) => line.includes('"kind"'))).toHaveLength(records.length);
  });

  test('carries issued states', () => {
    const issues = [
      {
        letter: 'A',
        title: 'for the pattern',
        note: '',
        issuedAt: '2026-01-02T03:04:05Z',
        records: [...records].reverse(),
      },
    ];
    expect(parseBuildJson(writeBuildJson({ records, issues }))).toMatchObject({ ok: true, value: { issues } });
  });

  test('an empty list of records is said to lack settings', () => {
    expect(placesOf(document({ records: [] }))).toEqual(['settings-missing /records']);
  });

  test.each([
    ['a newer version', document({ version: BUILD_VERSION + 1 }), ['newer-version /version']],
    ['no version', document({ version: 'one' }), ['not-a-build /version']],
    ['another format', document({ format: 'other' }), ['not-a-build /format']],
    ['a stray field', document({ 'a/b': 1 }), ['not-a-build /a~1b']],
    ['a list', '[]', ['not-a-build /']],
    ['no text', '', ['not-json line 1, column 1']],
    ['a missing comma', '{\n  "format": "x"\n  "version": 1\n}', ['not-json line 3, column 3']],
    [
      'an unknown kind',
      document({ records: [defaultSettings('m'), { kind: 'gear' }] }),
      ['kind-unknown /records/1/kind'],
    ],
    [
      'a field that does not fit, an unknown field and a double id',
      document({
        records: [
          defaultSettings('m'),
          { ...defaultPart(part, 'p', 1), quantity: 0 },
          { ...defaultPart(part, 'p', 1), colour: 'red' },
          defaultSettings('again'),
        ],
      }),
      ['field /records/1/quantity', 'field /records/2', 'id-twice /records/3/id'],
    ],
    [
      'pointers to nothing and across',
      document({
        records: [
          defaultSettings('m'),
          defaultPart(part, 'p', 1),
          { ...defaultStation(foot, part, 'Z', 'foot', 1), datum: true },
          { ...defaultStation(top, part, 'X', 'top', 1), datum: true },
          { ...defaultStation('station:two' as StationId, part, 'X', 'two', 1), datum: true },
          defaultStation('station:three' as StationId, 'part:none' as PartId, 'X', 'three', 1),
          defaultDimension('dimension:a' as DimensionId, part, 'a', { type: 'between', from: foot, to: top }, 1),
          defaultDimension('dimension:b' as DimensionId, part, 'b', { type: 'between', from: foot, to: foot }, 1),
          defaultDimension(
            'dimension:c' as DimensionId,
            part,
            'c',
            { type: 'between', from: foot, to: 'station:no' as StationId },
            1,
          ),
        ],
      }),
      [
        'two-datums /records/4/datum',
        'part-missing /records/5/part',
        'station-of-other-axis /records/6/measure/to',
        'same-station /records/7/measure/to',
        'station-missing /records/8/measure/to',
      ],
    ],
  ])('%s is refused at its place', (_, text, places) => {
    expect(placesOf(text)).toEqual(places);
  });
});

describe('the place where JSON breaks', () => {
  test.each([
    ['{"a": 1,}', 1, 9],
    ['[1, 2', 1, 6],
    ['{"a"\n 1}', 2, 2],
    ['"ab\ncd"', 1, 4],
    ['"\\x"', 1, 2],
    ['[1] x', 1, 5],
    ['nul', 1, 1],
    ['01', 1, 2],
    ['['.repeat(5000), 1, 502],
  ])('%s', (text, line, column) => {
    expect(findJsonFault(text)).toMatchObject({ line, column });
  });

  test.each(['{}', '[]', ' [1, -2.5e3, "a\\u00e9\\n", true, null, {"a": [], "b": {}}] '])('%s is JSON', (text) => {
    expect(findJsonFault(text)).toBeUndefined();
  });
});
