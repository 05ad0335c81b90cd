import { describe, expect, test } from 'vitest';
import { drawAsCorrected } from '../../resources/examples/source/draw.ts';
import { dimensionsOf, partsOf, stationsOf } from '../../src/shared/build/look-up.ts';
import { createWorks } from '../../src/shared/check/create-works.ts';
import { named } from './named.ts';

const build = drawAsCorrected();
const works = createWorks(build);
const machine = named(build, works.drawing);
const parts = partsOf(build);

/** What is computed is held to a hundredth of a micrometre: the figures below are exact. */
const DIGITS = 5;

describe('what it is made of', () => {
  test('16 parts: 8 cast, 7 from stock, 1 bought', () => {
    const makes = parts.map(({ make }) => make);
    expect(makes).toHaveLength(16);
    expect(makes.filter((make) => make === 'cast')).toHaveLength(8);
    expect(makes.filter((make) => make === 'stock')).toHaveLength(7);
    expect(makes.filter((make) => make === 'bought')).toHaveLength(1);
  });

  test('its dimensions and stations', () => {
    const dimensions = parts.flatMap(({ id }) => dimensionsOf(build, id));
    expect(dimensions).toHaveLength(429);
    expect(parts.flatMap(({ id }) => stationsOf(build, id))).toHaveLength(321);
    // Mixed units, and formulas across parts, in numbers that a machine of this kind has.
    expect(dimensions.filter(({ value }) => /\d"$/.test(value)).length).toBeGreaterThan(15);
    expect(dimensions.filter(({ value }) => value.includes(' of ')).length).toBeGreaterThan(30);
  });
});

describe('what its drawings say', () => {
  test('nothing stops it, every gate that it has is open', () => {
    expect(works.findings().filter(({ severity }) => severity !== 'note')).toEqual([]);
    for (const { id, make } of parts) {
      const states = new Map(works.gatesOf(id).map(({ gate, state }) => [gate, state]));
      expect(states.get('cut')).toBe(make === 'bought' ? 'not needed' : 'open');
      expect(states.get('machine')).toBe(make === 'bought' ? undefined : 'open');
    }
  });

  test('one honest note: a clearance worked out for the reader, which nothing needs', () => {
    const office = works.findings().filter(({ department }) => department === 'drawing');
    expect(office.map(({ rule, at }) => [rule, machine.nameOf(at[0])])).toEqual([
      ['unused-dimension', 'guide column: room over yoke'],
    ]);
  });

  test('every station is placed, every dimension has its value', () => {
    for (const { id } of parts) {
      for (const { groups, conflicts, loops } of works.drawing.axesOf(id)) {
        expect(groups).toHaveLength(1);
        expect(conflicts).toEqual([]);
        expect(loops).toEqual([]);
      }
      for (const { id: dimension } of dimensionsOf(build, id)) {
        expect(works.drawing.dimension(dimension)).toMatchObject({ problem: undefined, limitsProblem: undefined });
      }
    }
  });
});

describe('places worked out by hand', () => {
  test.each([
    // Seat 28, and 67 from there to the shaft: 28 + 67.
    ['base', 'Z', 'crank line', 95],
    // 24 less the floor of 5/16 in: 24 - 5 × 25.4 / 16 = 24 - 7.9375.
    ['base', 'Z', 'floor underside', 16.0625],
    // Middle of the rear pedestal: 26 + 60 + 16 / 2.
    ['base', 'Y', 'rear cap line', 94],
    // -60 + 14 + 138.
    ['base', 'Y', 'rear bench bolts', 92],
    // 127 + 70 - 16 - 40.
    ['guide column', 'Z', 'lower arm screws', 141],
    // 197 less half an inch: 197 - 12.7.
    ['guide column', 'Z', 'flange underside', 184.3],
    // (80 + 2 × (0.5 + 23)) / 2 = 127 / 2, to the left.
    ['guide column', 'X', 'left trunnion screws', -63.5],
    // Half of 1-1/4 in: 31.75 / 2.
    ['guide column', 'Y', 'leg rear', 15.875],
    // The lug is round about the pivot: -27 - 12.
    ['table', 'Z', 'lug bottom', -39],
    // (3/8 in + 3) / 2 = (9.525 + 3) / 2.
    ['table', 'X', 'slot right', 6.2625],
    // 2 × 27 × tan 10° = 9.5217; + 3.175 + 4 = 16.6967; to the next half millimetre 16.5; half of it.
    ['table', 'Y', 'slot rear', 8.25],
    // 48 + 22 / 2.
    ['trunnion bracket', 'Z', 'crown', 59],
    // 40 + 16 + 5 + 32 + 120 + 6 = 219, and the boss of 50.
    ['over-arm', 'Z', 'boss upper face', 269],
    // From the seat, 30 forward to the rod; 72 back to the post and 18 through it: -30 + 72 + 18.
    ['over-arm', 'Y', 'post rear', 60],
    // 6 + (20 - 10) / 2 + 10.
    ['flywheel', 'Y', 'web rear', 21],
    // (2 × 16 + 9.525 + 4) / 2 = 45.525 / 2.
    ['yoke', 'X', 'slot right', 22.7625],
    // 127 + 70 - 67 + 16 - 14 + 5.
    ['ram', 'Z', 'upper end', 137],
    // 60 - 12 = 48; 12 + 7 = 19; 40 - 1 = 39; all together.
    ['crankshaft', 'Y', 'rear end', 106],
    // -17.5 - 12.
    ['crankshaft', 'Y', 'front end', -29.5],
    // 18 + 1.5 + 2, forward of the shoulder.
    ['crank pin', 'Y', 'journal end', -21.5],
    // 16 + 0.5 + 0.2 + 8.
    ['table pivot', 'X', 'head end', 24.7],
    // 50 + 32 + 18.
    ['upper rod', 'Z', 'upper end', 100],
    // 15.87 / 2 + 4 = 11.935, to the next half millimetre, below the head.
    ['clamp screw', 'Z', 'tip', -12],
  ] as const)('%s, %s, %s: %d', (part, axis, station, place) => {
    expect(machine.place(part, axis, station)).toBeCloseTo(place, DIGITS);
  });

  test('sizes that follow from other parts', () => {
    // 15.87 + 0.04; 12.69 + 0.04; 3/8 in + 0.04; 5/8 in bar as measured.
    expect(machine.value('guide column', 'ram bore')).toBeCloseTo(15.91, DIGITS);
    expect(machine.value('over-arm', 'rod bore')).toBeCloseTo(12.73, DIGITS);
    expect(machine.value('yoke', 'slot width')).toBeCloseTo(9.565, DIGITS);
    expect(machine.value('bearing cap', 'bore')).toBeCloseTo(40, DIGITS);
    expect(machine.value('ram', 'stroke')).toBeCloseTo(32, DIGITS);
    expect(machine.value('guide column', 'room over yoke')).toBeCloseTo(4, DIGITS);
  });

  test('a band along a chain of general tolerances', () => {
    // Column top from its foot: 127 (ISO 2768-1 m, over 120 to 400: ±0.5) and 70 (over 30 to 120: ±0.3).
    const top = works.drawing.distance(
      machine.station('guide column', 'Z', 'foot'),
      machine.station('guide column', 'Z', 'top face'),
    );
    expect(top?.value).toBeCloseTo(197, DIGITS);
    expect(top?.band.plus).toBeCloseTo(0.5 + 0.3, DIGITS);
    expect(top?.band.minus).toBeCloseTo(-0.8, DIGITS);
    expect(top?.band.rss).toBeCloseTo(Math.hypot(0.5, 0.3), DIGITS);
  });
});

describe('the machine goes together', () => {
  const place = (part: string, axis: 'X' | 'Y' | 'Z', station: string): number => {
    const at = machine.place(part, axis, station);
    if (at === undefined) throw new Error(`${station} of ${part} has no place`);
    return at;
  };
  const seat = place('base', 'Z', 'column seat');
  const columnTop = seat + place('guide column', 'Z', 'top face');

  test('the table stands 300 over the bench', () => {
    const pivot = columnTop + place('trunnion bracket', 'Z', 'pivot line');
    expect(pivot - place('table', 'Z', 'pivot line')).toBeCloseTo(300, DIGITS);
  });

  test('the ram comes 5 out of its guide at the bottom of the stroke, and stays in the yoke', () => {
    const stroke = machine.value('ram', 'stroke')!;
    const lowest = place('base', 'Z', 'crank line') - stroke / 2 + place('yoke', 'Z', 'socket floor');
    expect(lowest + place('ram', 'Z', 'upper end') - columnTop).toBeCloseTo(5, DIGITS);
  });

  test('the upper rod stays under and above its guide by 6 and 12 at the ends of the stroke', () => {
    const lowerScrews = seat + place('guide column', 'Z', 'lower arm screws');
    const bossBottom = lowerScrews + place('over-arm', 'Z', 'boss lower face');
    const bossTop = lowerScrews + place('over-arm', 'Z', 'boss upper face');
    const highest = columnTop + 5 + machine.value('ram', 'stroke')! + machine.value('ram', 'file free length')!;
    expect(bossBottom - highest).toBeCloseTo(6, DIGITS);
    // At the bottom of the stroke: 388 + 50 is the boss's top; the rod reaches from 350 to 450.
    const rodTop = highest - machine.value('ram', 'stroke')! + place('upper rod', 'Z', 'upper end');
    expect(rodTop - bossTop).toBeCloseTo(12, DIGITS);
  });

  test('screws meet their holes', () => {
    for (const side of ['left', 'right']) {
      expect(place('guide column', 'X', `${side} column screws`)).toBe(place('base', 'X', `${side} column screws`));
      expect(place('guide column', 'X', `${side} arm screws`)).toBe(place('over-arm', 'X', `${side} screws`));
      expect(place('base', 'X', `${side} cap screws`)).toBe(place('bearing cap', 'X', `${side} screw`));
    }
    for (const end of ['front', 'rear']) {
      expect(place('guide column', 'Y', `${end} column screws`)).toBe(place('base', 'Y', `${end} column screws`));
      expect(place('guide column', 'Y', `${end} trunnion screws`)).toBe(place('trunnion bracket', 'Y', `${end} screw`));
    }
  });

  test('the bearings stand in the middle of their pedestals and the disc passes pedestal and yoke', () => {
    // The front shoulder bears on the bearing's rear face: pedestal front 26, half of (16 + 12) further on.
    const frontShoulder = place('base', 'Y', 'front cap line') + machine.value('crankshaft bearing', 'width')! / 2;
    const discRear = frontShoulder + place('crankshaft', 'Y', 'disc shoulder');
    const discFront = frontShoulder + place('crankshaft', 'Y', 'front end');
    expect(place('base', 'Y', 'front pedestal front') - discRear).toBeCloseTo(3.5, DIGITS);
    const yokeRear = place('yoke', 'Y', 'rear face') - place('yoke', 'Y', 'ram line');
    expect(discFront - yokeRear).toBeCloseTo(machine.value('crank pin', 'side gap')!, DIGITS);
  });

  test('every casting that is turned swings inside 95 from its own line', () => {
    const column = Math.hypot(place('guide column', 'X', 'foot right'), place('guide column', 'Y', 'foot front'));
    // √(77² + 38²), the corner not yet rounded.
    expect(column).toBeCloseTo(85.8662, 4);
    const rodToPost = place('over-arm', 'Y', 'post rear') - place('over-arm', 'Y', 'rod line');
    const arm = Math.hypot(rodToPost, place('over-arm', 'X', 'post right'));
    // √(90² + 13²).
    expect(arm).toBeCloseTo(90.934, 4);
    const corner = machine.value('table', 'corner radius')!;
    const plate = (place('table', 'X', 'right edge') - corner) * Math.SQRT2 + corner;
    // (65 - 12) × √2 + 12.
    expect(plate).toBeCloseTo(86.9533, 4);
    expect(Math.max(column, arm, plate, machine.value('flywheel', 'rim diameter')! / 2)).toBeLessThan(95);
  });
});
