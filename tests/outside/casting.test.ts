import { expect, test } from 'vitest';
import { castingTolerance } from '../../src/shared/tables/casting.ts';

/**
 * Source: ISO 8062-3:2007 table 2, page 3, as scanned at scribd.com document 526284450; rows up to 63 to 100 mm also at
 * iron-foundry.com (castings, ISO 8062). Total bands in mm of DCTG 1 to 16; `none`: an empty cell. The scan ends at
 * DCTG 12 in the last row.
 */
const none = undefined;
const published: readonly (readonly [over: number, upTo: number, bands: readonly (number | undefined)[]])[] = [
  [0, 10, [0.09, 0.13, 0.18, 0.26, 0.36, 0.52, 0.74, 1, 1.5, 2, 2.8, 4.2, none, none, none, none]],
  [10, 16, [0.1, 0.14, 0.2, 0.28, 0.38, 0.54, 0.78, 1.1, 1.6, 2.2, 3, 4.4, none, none, none, none]],
  [16, 25, [0.11, 0.15, 0.22, 0.3, 0.42, 0.58, 0.82, 1.2, 1.7, 2.4, 3.2, 4.6, 6, 8, 10, 12]],
  [25, 40, [0.12, 0.17, 0.24, 0.32, 0.46, 0.64, 0.9, 1.3, 1.8, 2.6, 3.6, 5, 7, 9, 11, 14]],
  [40, 63, [0.13, 0.18, 0.26, 0.36, 0.5, 0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 10, 12, 16]],
  [63, 100, [0.14, 0.2, 0.28, 0.4, 0.56, 0.78, 1.1, 1.6, 2.2, 3.2, 4.4, 6, 9, 11, 14, 18]],
  [100, 160, [0.15, 0.22, 0.3, 0.44, 0.62, 0.88, 1.2, 1.8, 2.5, 3.6, 5, 7, 10, 12, 16, 20]],
  [160, 250, [none, 0.24, 0.34, 0.5, 0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 14, 18, 22]],
  [250, 400, [none, none, 0.4, 0.56, 0.78, 1.1, 1.6, 2.2, 3.2, 4.4, 6.2, 9, 12, 16, 20, 25]],
  [400, 630, [none, none, none, 0.64, 0.9, 1.2, 1.8, 2.6, 3.6, 5, 7, 10]],
];

test.each(published)('castings over %i up to %i mm', (over, upTo, bands) => {
  bands.forEach((band, i) => {
    const half = band === undefined ? undefined : band / 2;
    expect(castingTolerance(i + 1, upTo)?.plusMinus, `DCTG ${i + 1} at ${upTo} mm`).toBe(half);
    expect(castingTolerance(i + 1, over + 0.001)?.plusMinus, `DCTG ${i + 1} just over ${over} mm`).toBe(half);
    if (band !== undefined) expect(castingTolerance(i + 1, upTo)?.status).toBe('read');
  });
});
