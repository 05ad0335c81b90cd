import { beforeAll, describe, expect, test } from 'vitest';
import { drawAsCorrected, drawAsFirstDrawn } from '../../resources/examples/source/draw.ts';
import { bodiesOf, partsOf } from '../../src/shared/build/look-up.ts';
import { createWorks } from '../../src/shared/check/create-works.ts';
import type { Works } from '../../src/shared/check/works.ts';
import { loadKernel } from '../../src/shared/solid/manifold/load-kernel.ts';
import type { MassProperties, PartMesh, PartState } from '../../src/shared/solid/placed.ts';
import { materialNamed } from '../../src/shared/tables/materials.ts';
import { type Named, named } from './named.ts';

let works: Works;
let machine: Named;
beforeAll(async () => {
  const kernel = await loadKernel();
  works = createWorks(drawAsCorrected(), () => kernel);
  for (const part of works.solids.pending()) works.computeSolid(part);
  machine = named(works.build, works.drawing);
}, 60_000);

function propertiesOf(part: string, state: PartState = 'finished'): MassProperties {
  const solid = works.solids.solidOf(machine.part(part));
  if (!solid) throw new Error(`${part} has no solid`);
  return state === 'finished' ? solid.finished : solid.asCast;
}

test('as corrected, its solids give rise to no finding, and every gate stays open', () => {
  const office = works.findings().filter(({ department }) => department === 'drawing');
  expect(office.map(({ rule, at }) => [rule, machine.nameOf(at[0])])).toEqual([
    ['unused-dimension', 'guide column: room over yoke'],
  ]);
  for (const { id } of partsOf(works.build)) {
    for (const { state } of works.gatesOf(id)) expect(state).not.toBe('shut');
  }
});

describe('bodies as corrected', () => {
  test('every part has bodies, every body has its place and changes something, every part is one piece', () => {
    const parts = partsOf(works.build);
    expect(parts.flatMap(({ id }) => bodiesOf(works.build, id))).toHaveLength(110);
    for (const { id, name } of parts) {
      const problems = works.solids.bodiesOf(id).filter(({ problem }) => problem);
      expect({ name, problems }).toEqual({ name, problems: [] });
      expect(works.solids.refusedOf(id)).toEqual([]);
      expect(works.solids.solidOf(id)).toMatchObject({
        idle: [],
        finished: { pieces: 1 },
        asCast: { pieces: 1 },
      });
    }
  });

  test('solids reach as far as the figures of their drawings', () => {
    const size = (part: string) => {
      const { boxMin, boxMax } = propertiesOf(part);
      return boxMax.map((most, i) => Number((most - boxMin[i]!).toFixed(6)));
    };
    // 160 wide, 166 long, 28 + 67 high.
    expect(size('base')).toEqual([160, 166, 95]);
    // Foot 154; from 38 before the ram to the arm's seat 30 behind it; 127 + 70.
    expect(size('guide column')).toEqual([154, 68, 197]);
    // From the crown of the lug, 12 below the pivots, to the top 27 above them.
    expect(size('table')).toEqual([130, 130, 39]);
    // Pad 58; half of the boss of 1-3/8 in before the rod, 90 behind it; from 15 below the screws to 219 + 50 above.
    expect(size('over-arm')).toEqual([58, Number((34.925 / 2 + 90).toFixed(6)), 284]);
    expect(size('flywheel')).toEqual([170, 40, 170]);
  });
});

/** mm³ of a round bar, and of a cone cut off. */
const round = (diameter: number, length: number) => (Math.PI / 4) * diameter ** 2 * length;
const cut = (a: number, b: number, length: number) => ((Math.PI / 4) * (a ** 2 + a * b + b ** 2) * length) / 3;

describe('volumes worked out by hand', () => {
  const near = (part: string, state: PartState, mm3: number) => {
    expect(propertiesOf(part, state).volumeMm3 / mm3).toBeCloseTo(1, 5);
  };

  test('clamp screw: point, shank and head', () => {
    near('clamp screw', 'finished', round(3.5, 2) + round(5, 10) + round(12.7, 8));
  });

  test('crankshaft bearing: a ring, and the room between its rings', () => {
    near('crankshaft bearing', 'finished', round(40, 12) - round(17, 12) - (round(33, 10) - round(24.5, 10)));
  });

  test('crankshaft before its keyway and thread: five lengths', () => {
    const lengths = round(12, 12) + round(17, 17.5) + round(19.05, 48) + round(17, 19) + round(16, 39);
    near('crankshaft', 'as cast', lengths);
    // Tap drill 5 - 0.8 = 4.2, 16 deep, with a point of 118°: 2.1 / tan 59° long.
    const thread = round(4.2, 16) + cut(4.2, 0, 2.1 / Math.tan((59 * Math.PI) / 180));
    // The keyway of 3/16 in, 25.4 over its round ends, 2.5 below the top of a seat of 16.
    const width = 4.7625;
    const plan = (width * (25.4 - width) + round(width, 1)) * 2.5;
    // Less the cap that the round of the seat leaves over it: nowhere more than 8 - √(8² - 2.38²) = 0.36 high.
    const { volumeMm3 } = propertiesOf('crankshaft');
    expect(volumeMm3).toBeGreaterThan(lengths - thread - plan);
    expect(volumeMm3).toBeLessThan(lengths - thread - plan * (1 - 0.36 / 2.5));
  });

  test('crank disc: chamfered on both edges, with two holes through and one from the edge to the bore', () => {
    const disc = round(60, 10) + 2 * cut(60, 58, 1);
    near('crank disc', 'as cast', disc);
    // M8: tap drill 6.75. The cross hole of 1/8 in reaches from the bore to the edge, 30 - 6, but for two small caps.
    expect(propertiesOf('crank disc').volumeMm3 / 1000).toBeCloseTo(
      (disc - round(12, 12) - round(6.75, 12) - round(3.175, 24)) / 1000,
      1,
    );
  });

  test('flywheel as cast: hub and rim taper towards the web', () => {
    const hub = cut(44, 52, 11) + cut(52, 44, 19);
    const web = round(170, 10);
    const rim = 2 * (round(170, 5) - cut(132, 138, 5));
    near('flywheel', 'as cast', hub + web + rim - 5 * round(28, 10));
  });

  test('trunnion bracket: foot, cheek, boss, gusset and fillet, each less what another has already', () => {
    const corner = 1 - Math.PI / 4;
    const thickness = 7.9375;
    const foot = 33 * 60 * 10 - 2 * corner * 6 ** 2 * 10;
    // 46 wide beside the fillet of 4, then narrowing to 22 at the pivots, 48 - 14 higher up; 12 thick.
    const cheek = (46 * 4 + ((46 + 22) / 2) * 34) * 12;
    // Its lower half lies in the cheek.
    const boss = round(22, 16) - round(22, 12) / 2;
    const gusset = ((30 - 12) * 24 * thickness) / 2;
    const fillet = corner * 4 ** 2 * (46 - thickness);
    const poured = foot + cheek + boss + gusset + fillet;
    near('trunnion bracket', 'as cast', poured);
    near('trunnion bracket', 'finished', poured - round(9.525, 16) - 2 * (round(6.6, 9) + round(12, 1)));
  });
});

test('masses are those of such castings', () => {
  const kg = (part: string) => {
    const record = partsOf(works.build).find(({ name }) => name === part)!;
    return (propertiesOf(part).volumeMm3 * materialNamed(record.material)!.densityKgM3!) / 1e9;
  };
  // 39.4 cm³ of aluminium at 2.68 g/cm³; 30.7 cm³ of steel at 7.85.
  expect(kg('trunnion bracket')).toBeCloseTo(0.1056, 3);
  expect(kg('crankshaft')).toBeCloseTo(0.241, 3);
  // About 307 cm³ of zinc alloy at 6.03 g/cm³.
  expect(kg('flywheel')).toBeCloseTo(1.85, 2);
  // Figures of the program, kept here so that a slip in a body shows.
  expect(kg('base')).toBeCloseTo(1.37, 2);
  expect(kg('guide column')).toBeCloseTo(1.38, 2);
  expect(kg('table')).toBeCloseTo(0.56, 2);
  expect(kg('over-arm')).toBeCloseTo(0.716, 2);
  expect(kg('bearing cap')).toBeCloseTo(0.05, 2);
  expect(kg('yoke')).toBeCloseTo(0.23, 2);
  const all = partsOf(works.build)
    .filter(({ material }) => material !== '')
    .reduce((sum, { name, quantity }) => sum + quantity * kg(name), 0);
  expect(all).toBeGreaterThan(6);
  expect(all).toBeLessThan(9);
});

describe('swing', () => {
  /** Greatest distance of a mesh from a line along an axis, in mm; the line is given by the two other axes. */
  const reachAbout = ({ vertices }: PartMesh, [i, j]: readonly [number, number], [a, b]: readonly [number, number]) => {
    let most = 0;
    for (let k = 0; k < vertices.length; k += 3)
      most = Math.max(most, Math.hypot(vertices[k + i]! - a, vertices[k + j]! - b));
    return most;
  };

  test.each([
    // Rounded by 8 at the corner: √(69² + 30²) + 8.
    ['guide column', [0, 1], [0, 0], 83.2396],
    // Rounded by 12: 53 × √2 + 12.
    ['table', [0, 1], [0, 0], 86.9533],
    // Post's rear corner about the rod, 30 before the seat: √(90² + 13²).
    ['over-arm', [0, 1], [0, -30], 90.934],
    ['flywheel', [0, 2], [0, 0], 85],
  ] as const)('%s reaches as far from the line it is turned about as its corner does', (part, axes, line, mm) => {
    const mesh = works.solids.meshOf(machine.part(part), 'finished')!;
    // Rounded corners and rims of the mesh may lie a hundredth inside or outside the true ones.
    expect(Math.abs(reachAbout(mesh, axes, line) - mm)).toBeLessThan(0.02);
    expect(mm).toBeLessThan(95);
  });
});

test('as first drawn, bodies have no solid where what they hang on is missing or does not fit', () => {
  const first = createWorks(drawAsFirstDrawn());
  const unplaced = partsOf(first.build).flatMap(({ id, name }) =>
    first.solids
      .bodiesOf(id)
      .filter(({ problem }) => problem)
      .map(({ record, problem }) => `${name}: ${record.name}: ${problem!.why}`),
  );
  expect(unplaced).toEqual([
    // No height of the pivots.
    'trunnion bracket: cheek: not-placed',
    'trunnion bracket: pivot boss: not-placed',
    'trunnion bracket: pivot bore: not-placed',
    'flywheel: belt groove: not-placed',
    // A hole from a face to itself.
    'flywheel: balance hole: no-size',
    // Its fillet cannot be read.
    'bearing cap: bar: not-placed',
    // Ends rounded by more than half its depth; the ring between the yoke's socket and the ram's length; a name misspelt.
    'yoke: body: shape',
    'yoke: boss: not-placed',
    'yoke: slot: not-placed',
    'yoke: ram socket: not-placed',
    'ram: spigot: not-placed',
    'ram: bar: not-placed',
    'ram: clamp flat: not-placed',
    'ram: file socket: not-placed',
    'ram: clamp screw hole: not-placed',
    // No datum.
    'upper rod: bar: not-placed',
    'upper rod: file socket: not-placed',
    'upper rod: clamp screw hole: not-placed',
  ]);
});
