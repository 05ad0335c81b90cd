import { expect } from 'vitest';
import { dimensionId, fact, part, settings, size } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './limits-too-narrow.ts';

const within = (value: number, half: number, origin: 'written' | 'general' = 'written') => ({
  resolved: { limits: { lower: value - half, upper: value + half, origin, row: 'as written' } },
});
const cast = { finish: 'as cast' as const };

testRule(rule, {
  passes: [
    {
      name: 'limits that the make holds',
      facts: {
        settings: settings(),
        part: part('column'),
        dimensions: [fact('wall', 30, { ...cast, ...within(30, 1.8) }), fact('bore', 30, within(30, 0.0065))],
      },
    },
    {
      name: 'limits that nobody wrote',
      facts: {
        settings: settings(),
        part: part('column'),
        dimensions: [fact('wall', 30, { ...cast, ...within(30, 0.1, 'general') })],
      },
    },
    {
      name: 'what is bought',
      facts: {
        settings: settings(),
        part: part('bearing', { make: 'bought' }),
        dimensions: [fact('bore', 30, within(30, 0.001))],
      },
    },
    {
      name: 'threads, machined radii, angles',
      facts: {
        settings: settings(),
        part: part('column'),
        dimensions: [
          fact('tap', 8, { measure: size('thread'), ...within(8, 0.001) }),
          fact('corner', 8, { measure: size('radius'), ...within(8, 0.001) }),
          fact('tilt', 8, { measure: size('angle'), ...within(8, 0.001) }),
        ],
      },
    },
  ],
  finds: [
    {
      // ISO 8062-3:2007 table 2: DCTG 11 over 25 up to 40 mm is 3.6 mm in all.
      name: 'as cast, against the casting grade of the build',
      facts: {
        settings: settings({ castingGrade: 11 }),
        part: part('column'),
        dimensions: [fact('wall', 30, { ...cast, ...within(30, 0.5) })],
      },
      findings: [
        {
          message: 'cast',
          at: [dimensionId('wall')],
          data: {
            name: 'wall',
            part: 'column',
            bandMm: 1,
            holdsMm: 3.6,
            row: 'ISO 8062-3:2007 table 2, DCTG 11, half of 3.6 mm, 25 to 40 mm',
          },
        },
      ],
    },
    {
      // ISO 286-1:2010 table 1: IT6 over 18 up to 30 mm is 13 µm.
      name: 'machined, finer than IT6',
      facts: { settings: settings(), part: part('column'), dimensions: [fact('bore', 25, within(25, 0.004))] },
      findings: [
        {
          message: 'machined',
          at: [dimensionId('bore')],
          data: {
            name: 'bore',
            part: 'column',
            bandMm: expect.closeTo(0.008, 9) as unknown as number,
            holdsMm: 0.013,
            row: 'ISO 286-1:2010 table 1, IT6, 18 to 30 mm',
            grade: 6,
          },
        },
      ],
    },
  ],
});
