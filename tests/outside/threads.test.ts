import { describe, expect, test } from 'vitest';
import { parseThread } from '../../src/shared/quantity/parse-thread.ts';
import { inchClearance, metricClearance } from '../../src/shared/tables/clearance-holes.ts';
import { drillCalled } from '../../src/shared/tables/drills.ts';
import { percentOfThread, tableTapDrill } from '../../src/shared/tables/tap-drill.ts';
import { basicThread } from '../../src/shared/tables/threads-basic.ts';
import { knownThread } from '../../src/shared/tables/threads-known.ts';

function thread(name: string) {
  const read = parseThread(name);
  if (!read?.ok) throw new Error(name);
  return read.value;
}

function basic(name: string) {
  const { form, majorMm, pitchMm } = thread(name);
  return basicThread(form, majorMm, pitchMm);
}

function tapDrill(name: string) {
  const { form, majorMm, pitchMm } = thread(name);
  const row = tableTapDrill(knownThread(form, majorMm, pitchMm)!.name)!;
  const { diameterMm } = drillCalled(row.drill)!;
  return { ...row, diameterMm, percent: percentOfThread(form, majorMm, pitchMm, diameterMm) };
}

/** Printed to the last figure of a table: half of it either way, and a little for the binary fraction. */
const agrees = (value: number, printed: number, decimals: number, name: string): void => {
  expect(Math.abs(value - printed), `${name}: ${value} for ${printed}`).toBeLessThan(0.5001 * 10 ** -decimals);
};

/**
 * Source: ISO 724 diameters d2, d3, D1 and tap drills, read on the metric thread chart of get-it-made.co.uk. Its M18 is left
 * out (it prints D1 15.394 for 15.294), and its tap drill of M4.5, on which charts differ.
 */
test.each<[string, number, number, number, number | undefined]>([
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: a minor diameter, no logarithm and no circle
  ['M1', 0.838, 0.693, 0.729, 0.75],
  ['M1.1', 0.938, 0.793, 0.829, 0.85],
  ['M1.2', 1.038, 0.893, 0.929, 0.95],
  ['M1.4', 1.205, 1.032, 1.075, 1.1],
  ['M1.6', 1.373, 1.171, 1.221, 1.25],
  ['M1.8', 1.573, 1.371, 1.421, 1.45],
  ['M2', 1.74, 1.509, 1.567, 1.6],
  ['M2.2', 1.908, 1.648, 1.713, 1.75],
  ['M2.5', 2.208, 1.948, 2.013, 2.05],
  ['M3', 2.675, 2.387, 2.459, 2.5],
  ['M3.5', 3.11, 2.764, 2.85, 2.9],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: a minor diameter, no logarithm and no circle
  ['M4', 3.545, 3.141, 3.242, 3.3],
  ['M4.5', 4.013, 3.58, 3.688, undefined],
  ['M5', 4.48, 4.019, 4.134, 4.2],
  ['M6', 5.35, 4.773, 4.917, 5],
  ['M7', 6.35, 5.773, 5.917, 6],
  ['M8', 7.188, 6.466, 6.647, 6.8],
  ['M9', 8.188, 7.466, 7.647, 7.8],
  ['M10', 9.026, 8.16, 8.376, 8.5],
  ['M11', 10.026, 9.16, 9.376, 9.5],
  ['M12', 10.863, 9.853, 10.106, 10.2],
  ['M14', 12.701, 11.546, 11.835, 12],
  ['M16', 14.701, 13.546, 13.835, 14],
  ['M20', 18.376, 16.933, 17.294, 17.5],
])('%s: pitch diameter %f, minor diameters %f and %f mm', (name, d2, d3, D1, drill) => {
  const { pitchDiameterMm, minorNutMm, minorScrewMm } = basic(name);
  agrees(pitchDiameterMm, d2, 3, name);
  agrees(minorNutMm, D1, 3, name);
  // Charts round the height of the root before they take it off.
  expect(Math.abs(minorScrewMm - d3), name).toBeLessThan(0.0011);
  if (drill !== undefined) expect(tapDrill(name)).toMatchObject({ diameterMm: drill, status: 'read' });
});

/** Source: tap drills of coarse threads on the metric thread pitch chart of mlc.org.uk. */
test.each<[string, number]>([
  ['M18', 15.5],
  ['M22', 19.5],
  ['M24', 21],
  ['M27', 24],
  ['M30', 26.5],
  ['M33', 29.5],
  ['M36', 32],
  ['M39', 35],
  ['M42', 37.5],
  ['M45', 40.5],
  ['M48', 43],
  ['M52', 47],
  ['M56', 50.5],
  ['M60', 54.5],
  ['M64', 58],
])('%s is tapped in %f mm', (name, drill) => {
  expect(tapDrill(name).diameterMm).toBe(drill);
});

/** Source: ISO 724 fine threads d2, d3, D1, read on the fine thread table of engineeringhardware.com. */
test.each<[string, number, number, number]>([
  ['M8x1', 7.35, 6.773, 6.917],
  ['M8x0.75', 7.513, 7.08, 7.188],
  ['M10x1.25', 9.188, 8.466, 8.647],
  ['M10x1', 9.35, 8.773, 8.917],
  ['M10x0.75', 9.513, 9.08, 9.188],
  ['M12x1.5', 11.026, 10.16, 10.376],
  ['M12x1.25', 11.188, 10.466, 10.647],
  ['M12x1', 11.35, 10.773, 10.917],
  ['M14x1.5', 13.026, 12.16, 12.376],
  ['M14x1.25', 13.188, 12.466, 12.647],
  ['M16x1.5', 15.026, 14.16, 14.376],
  ['M16x1', 15.35, 14.773, 14.917],
  ['M18x2', 16.701, 15.546, 15.835],
  ['M18x1.5', 17.026, 16.16, 16.376],
  ['M20x2', 18.701, 17.546, 17.835],
  ['M20x1.5', 19.026, 18.16, 18.376],
  ['M20x1', 19.35, 18.773, 18.917],
])('%s: pitch diameter %f, minor diameters %f and %f mm', (name, d2, d3, D1) => {
  const { pitchDiameterMm, minorNutMm, minorScrewMm } = basic(name);
  agrees(pitchDiameterMm, d2, 3, name);
  agrees(minorNutMm, D1, 3, name);
  agrees(minorScrewMm, d3, 3, name);
  expect(knownThread('metric', thread(name).majorMm, thread(name).pitchMm)?.series).toBe('fine');
});

/**
 * Source: nominal stress areas of ISO 898-1 in mm²; coarse threads read on two pages (usefastener.com and the proof loads of
 * optimas.com), fine ones on the fine thread table of engineeringhardware.com where it follows the standard's formula.
 */
test.each<[string, number]>([
  ['M3', 5.03],
  ['M3.5', 6.78],
  ['M4', 8.78],
  ['M5', 14.2],
  ['M6', 20.1],
  ['M7', 28.9],
  ['M8', 36.6],
  ['M10', 58],
  ['M12', 84.3],
  ['M14', 115],
  ['M16', 157],
  ['M18', 192],
  ['M20', 245],
  ['M22', 303],
  ['M24', 353],
  ['M27', 459],
  ['M30', 561],
  ['M33', 694],
  ['M36', 817],
  ['M39', 976],
  ['M8x1', 39.2],
  ['M10x1.25', 61.2],
  ['M10x1', 64.5],
  ['M12x1.5', 88.1],
  ['M12x1.25', 92.1],
  ['M14x1.5', 125],
  ['M16x1.5', 167],
])('%s has %f mm² of stress area', (name, area) => {
  expect(Number(basic(name).stressAreaMm2.toPrecision(3))).toBe(area);
});

/**
 * Source: ASME B1.1 fine threads, read on the tables of boltport.com and ficientdesign.com: pitch diameter, minor diameter
 * of the UNR screw and of the nut in inches, tensile stress area in in². Two screws are left out, which are less deep or
 * deeper there than all others of the table: 3/4-16 (0.6763) and 1-12 (0.9001).
 */
test.each<[string, number, number | undefined, number, number]>([
  ['#0-80', 0.0519, 0.0451, 0.0465, 0.0018],
  ['#1-72', 0.064, 0.0565, 0.058, 0.00278],
  ['#2-64', 0.0759, 0.0674, 0.0691, 0.00394],
  ['#3-56', 0.0874, 0.0778, 0.0797, 0.00523],
  ['#4-48', 0.0985, 0.0871, 0.0894, 0.00661],
  ['#5-44', 0.1102, 0.0979, 0.1004, 0.0083],
  ['#6-40', 0.1218, 0.1082, 0.1109, 0.01015],
  ['#8-36', 0.146, 0.1309, 0.1339, 0.01474],
  ['#10-32', 0.1697, 0.1528, 0.1562, 0.02],
  ['#12-28', 0.1928, 0.1734, 0.1773, 0.0258],
  ['1/4-28', 0.2268, 0.2074, 0.2113, 0.0364],
  ['5/16-24', 0.2854, 0.2629, 0.2674, 0.058],
  ['3/8-24', 0.3479, 0.3254, 0.3299, 0.0878],
  ['7/16-20', 0.405, 0.378, 0.3834, 0.1187],
  ['1/2-20', 0.4675, 0.4405, 0.4459, 0.1599],
  ['9/16-18', 0.5264, 0.4964, 0.5024, 0.203],
  ['5/8-18', 0.5889, 0.5589, 0.5649, 0.256],
  ['3/4-16', 0.7094, undefined, 0.6823, 0.373],
  ['7/8-14', 0.8286, 0.79, 0.7977, 0.509],
  ['1-12', 0.9459, undefined, 0.9098, 0.663],
  ['1-1/8-12', 1.0709, 1.0258, 1.0348, 0.856],
  ['1-1/4-12', 1.1959, 1.1508, 1.1598, 1.073],
  ['1-3/8-12', 1.3209, 1.2758, 1.2848, 1.315],
  ['1-1/2-12', 1.4459, 1.4008, 1.4098, 1.581],
])('%s: pitch diameter %f, minor diameters %s and %f in', (name, pitchDiameter, screw, nut, area) => {
  const { pitchDiameterMm, minorNutMm, minorScrewMm, stressAreaMm2 } = basic(name);
  agrees(pitchDiameterMm / 25.4, pitchDiameter, 4, name);
  agrees(minorNutMm / 25.4, nut, 4, name);
  if (screw !== undefined) expect(Math.abs(minorScrewMm / 25.4 - screw), name).toBeLessThan(0.0002);
  expect(Math.abs(stressAreaMm2 / 25.4 ** 2 / area - 1), name).toBeLessThan(0.003);
});

/** Source: ASME B1.1 coarse threads, tensile stress areas in in², read on the unified thread table of formulafactory.tools. */
test.each<[string, number]>([
  ['#4-40', 0.00604],
  ['#6-32', 0.00909],
  ['#8-32', 0.014],
  ['#10-24', 0.0175],
  ['1/4-20', 0.0318],
  ['5/16-18', 0.0524],
  ['3/8-16', 0.0775],
  ['7/16-14', 0.1063],
  ['1/2-13', 0.1419],
  ['5/8-11', 0.226],
  ['3/4-10', 0.334],
  ['7/8-9', 0.462],
  ['1-8', 0.606],
])('%s has %f in² of stress area', (name, area) => {
  expect(Math.abs(basic(name).stressAreaMm2 / 25.4 ** 2 / area - 1)).toBeLessThan(0.003);
});

/** Source: tap drills for three quarters of a thread, read on the tap drill chart of swarf.shop; UNC to 1 in. */
test.each<[string, string]>([
  ['#1-64', 'No 53'],
  ['#2-56', 'No 50'],
  ['#3-48', 'No 47'],
  ['#4-40', 'No 43'],
  ['#5-40', 'No 38'],
  ['#6-32', 'No 36'],
  ['#8-32', 'No 29'],
  ['#10-24', 'No 25'],
  ['#12-24', 'No 16'],
  ['1/4-20', 'No 7'],
  ['5/16-18', 'F'],
  ['3/8-16', '5/16 in'],
  ['7/16-14', 'U'],
  ['1/2-13', '27/64 in'],
  ['9/16-12', '31/64 in'],
  ['5/8-11', '17/32 in'],
  ['3/4-10', '21/32 in'],
  ['7/8-9', '49/64 in'],
  ['1-8', '7/8 in'],
])('%s is tapped in %s', (name, drill) => {
  expect(tapDrill(name)).toMatchObject({ drill, status: 'read' });
});

/** Source: tap and clearance hole chart of manufacturinget.org (2012), fine threads, three quarters of a thread. */
test.each<[string, string]>([
  ['#0-80', '3/64 in'],
  ['#1-72', 'No 53'],
  ['#2-64', 'No 50'],
  ['#3-56', 'No 45'],
  ['#4-48', 'No 42'],
  ['#5-44', 'No 37'],
  ['#8-36', 'No 29'],
  ['#10-32', 'No 21'],
  ['#12-28', 'No 14'],
  ['1/4-28', 'No 3'],
  ['5/16-24', 'I'],
  ['3/8-24', 'Q'],
])('%s is tapped in %s', (name, drill) => {
  expect(tapDrill(name)).toMatchObject({ drill, status: 'read' });
});

/** Source: Machinery's Handbook, 31st ed., p. 2155: 1-64 with No 53 has 66 to 67 %, 2-56 with No 50 has 69 % of thread. */
test('percentages of the handbook', () => {
  expect(tapDrill('#1-64').percent).toBeGreaterThan(66);
  expect(tapDrill('#1-64').percent).toBeLessThan(67);
  expect(Math.round(tapDrill('#2-56').percent)).toBe(69);
});

describe('clearance holes', () => {
  /** Source: ISO 273 fine, medium, coarse, read on the clearance hole table of engineeringhardware.com. */
  test.each<[number, number, number, number]>([
    [1, 1.1, 1.2, 1.3],
    [1.2, 1.3, 1.4, 1.5],
    [1.4, 1.5, 1.6, 1.8],
    [1.6, 1.7, 1.8, 2],
    [2, 2.2, 2.4, 2.6],
    [2.5, 2.7, 2.9, 3.1],
    [3, 3.2, 3.4, 3.6],
    [3.5, 3.7, 3.9, 4.2],
    [4, 4.3, 4.5, 4.8],
    [5, 5.3, 5.5, 5.8],
    [6, 6.4, 6.6, 7],
    [7, 7.4, 7.6, 8],
    [8, 8.4, 9, 10],
    [10, 10.5, 11, 12],
    [12, 13, 13.5, 14.5],
    [14, 15, 15.5, 16.5],
    [16, 17, 17.5, 18.5],
  ])('M%f: %f, %f, %f mm', (size, ...holes) => {
    expect(metricClearance(size).map(({ diameterMm }) => diameterMm)).toEqual(holes);
    expect(metricClearance(size).every(({ status }) => status === 'read')).toBe(true);
  });

  /** Source: ASME B18.2.8 close, normal, loose in inches, read on the bolt clearance hole chart of jandesupply.com. */
  test.each<[string, number, number, number, number]>([
    ['#8', 0.164, 0.18, 0.196, 0.213],
    ['#10', 0.19, 0.206, 0.221, 0.238],
    ['1/4', 0.25, 0.266, 0.281, 0.297],
    ['5/16', 0.3125, 0.328, 0.344, 0.359],
    ['3/8', 0.375, 0.391, 0.406, 0.422],
    ['7/16', 0.4375, 0.453, 0.469, 0.484],
    ['1/2', 0.5, 0.531, 0.562, 0.609],
    ['5/8', 0.625, 0.656, 0.688, 0.734],
    ['3/4', 0.75, 0.781, 0.812, 0.906],
    ['7/8', 0.875, 0.906, 0.938, 1.031],
    ['1', 1, 1.031, 1.094, 1.156],
  ])('%s (%f in): %f, %f, %f in', (name, major, ...holes) => {
    const found = inchClearance(major * 25.4);
    expect(found).toHaveLength(3);
    found.forEach(({ diameterMm, status }, i) => {
      expect(Math.abs(diameterMm / 25.4 - holes[i]!), `${name} ${i}`).toBeLessThan(0.00051);
      expect(status).toBe('read');
    });
  });

  /** Source: ASME B18.2.8 least diameters of loose holes in inches, read in Machinery's Handbook, 31st ed., p. 1741. */
  test.each<[number, number]>([
    [0.06, 0.094],
    [0.073, 0.104],
    [0.086, 0.116],
    [0.099, 0.128],
    [0.112, 0.144],
    [0.125, 0.172],
    [0.138, 0.185],
    [0.164, 0.213],
    [0.25, 0.297],
    [0.3125, 0.359],
    [0.375, 0.422],
    [0.4375, 0.484],
    [0.5, 0.609],
    [0.625, 0.734],
    [0.75, 0.906],
    [0.875, 1.031],
    [1, 1.156],
    [1.125, 1.312],
    [1.25, 1.438],
    [1.375, 1.609],
    [1.5, 1.734],
  ])('a screw of %f in goes loosely through %f in', (major, hole) => {
    const loose = inchClearance(major * 25.4)[2];
    expect(Math.abs(loose!.diameterMm / 25.4 - hole)).toBeLessThan(0.00051);
  });
});
