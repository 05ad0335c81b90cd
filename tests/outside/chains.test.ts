import { describe, expect, test } from 'vitest';
import { createDrawing } from '../../src/shared/drawing/create-drawing.ts';
import { partId, sketch, stationId } from '../support/sketch-build.ts';

const MM_PER_INCH = 25.4;

// Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th edition, example 1-3 (page 20), read: a shoulder screw
// holds three parts, a = 1.750 ± 0.003 in, b = 0.750 ± 0.001, c = 0.120 ± 0.005, d = 0.875 ± 0.001; the gap is a − b − c − d.
describe('the shoulder screw of Shigley, example 1-3', () => {
  const screw = (d: string) =>
    createDrawing(
      sketch()
        .part('screw')
        .stations('shoulder', 'head', 'b', 'c', 'd')
        .between('a', 'shoulder', 'head', '1.750 in', { limits: '±0.003 in' })
        .between('b size', 'shoulder', 'b', '0.750 in', { limits: '±0.001 in' })
        .between('c size', 'b', 'c', '0.120 in', { limits: '±0.005 in' })
        .between('d size', 'c', 'd', d, { limits: '±0.001 in' })
        .build(),
    ).distance(stationId('d'), stationId('head'))!;

  test('mean gap 0.005 in, worst case ± 0.010 in: from −0.005 to 0.015 in', () => {
    const { value, band } = screw('0.875 in');
    expect(value / MM_PER_INCH).toBeCloseTo(0.005, 9);
    expect(band.plus / MM_PER_INCH).toBeCloseTo(0.01, 9);
    expect(band.minus / MM_PER_INCH).toBeCloseTo(-0.01, 9);
    expect((value + band.plus) / MM_PER_INCH).toBeCloseTo(0.015, 9);
    expect((value + band.minus) / MM_PER_INCH).toBeCloseTo(-0.005, 9);
  });

  test('with d = 0.867 in the least gap is 0.003 in and the mean 0.013 in', () => {
    const { value, band } = screw('0.867 in');
    expect((value + band.minus) / MM_PER_INCH).toBeCloseTo(0.003, 9);
    expect(value / MM_PER_INCH).toBeCloseTo(0.013, 9);
  });

  // Not printed there: it follows from the given limits as √(3² + 1² + 5² + 1²) = 6 thousandths.
  test('the root-sum-square band is ± 0.006 in', () => {
    expect(screw('0.875 in').band.rss / MM_PER_INCH).toBeCloseTo(0.006, 9);
  });
});

// Bhandari, Design of Machine Elements, example 3.1, read: a bush 20.000 to 20.013 mm on a pin 19.939 to 19.960 mm has a
// clearance of 0.040 to 0.074 mm. Written here as a chain of two diameters from one side, with unequal limits.
test('the bush and pin of Bhandari, example 3.1', () => {
  const { value, band } = createDrawing(
    sketch()
      .part('bush')
      .stations('side', 'bush', 'pin')
      .between('bush size', 'side', 'bush', '20', { limits: '+0.013/0' })
      .between('pin size', 'side', 'pin', '20', { limits: '-0.040/-0.061' })
      .build(),
  ).distance(stationId('pin'), stationId('bush'))!;
  expect(value + band.minus).toBeCloseTo(0.04, 9);
  expect(value + band.plus).toBeCloseTo(0.074, 9);
  // The middle of the clearance, about which the root-sum-square band lies.
  expect(value + band.rssCentre).toBeCloseTo(0.057, 9);
});

// ISO 2768-1:1989 table 1 (read in two copies that agree): 10 mm in class m ± 0.2, 50 mm ± 0.3, 200 mm ± 0.5.
test('a chain without limits of its own takes those of ISO 2768-1, class m', () => {
  const [x] = createDrawing(
    sketch()
      .part('bed')
      .stations('a', 'b', 'c', 'd')
      .between('ab', 'a', 'b', '10')
      .between('bc', 'b', 'c', '50')
      .between('cd', 'c', 'd', '200')
      .build(),
  ).axesOf(partId('bed'));
  const { band } = x!.stations[3]!;
  expect(band.plus).toBeCloseTo(1, 12);
  expect(band.minus).toBeCloseTo(-1, 12);
  expect(band.rss).toBeCloseTo(Math.sqrt(0.04 + 0.09 + 0.25), 12);
});
