import { describe, expect, test } from 'vitest';
import { createBoard, drawDimension } from '../../resources/examples/source/board.ts';
import { drawAsCorrected, drawAsFirstDrawn } from '../../resources/examples/source/draw.ts';
import { faults } from '../../resources/examples/source/first-drawn-faults.ts';
import { tie } from '../../resources/examples/source/sketch.ts';
import { type BuildDiff, invert } from '../../src/shared/build/diff.ts';
import { partsOf } from '../../src/shared/build/look-up.ts';
import type { Build } from '../../src/shared/build/records.ts';
import type { Axis } from '../../src/shared/build/station.ts';
import { createWorks } from '../../src/shared/check/create-works.ts';
import { rules } from '../../src/shared/check/registry.ts';
import type { Works } from '../../src/shared/check/works.ts';
import type { Conflict } from '../../src/shared/drawing/drawing.ts';
import { loadKernel } from '../../src/shared/solid/manifold/load-kernel.ts';
import { named } from './named.ts';

const kernel = await loadKernel();

function solve(works: Works): Works {
  for (const part of works.solids.pending()) works.computeSolid(part);
  return works;
}

const worksOf = (build: Build): Works => solve(createWorks(build, () => kernel));

/** `rule: part: subject`, one for each finding. */
const said = (works: Works): readonly string[] => {
  const { nameOf } = named(works.build, works.drawing);
  return works.findings().map(({ rule, at }) => `${rule} | ${nameOf(at[0])}`);
};

const corrected = drawAsCorrected();
const works = worksOf(corrected);
const quiet = said(works);

function between(before: Build, after: Build): BuildDiff {
  const records = [...after.values()];
  return {
    added: records.filter(({ id }) => !before.has(id)),
    updated: records.flatMap((to) => {
      const from = before.get(to.id);
      return from && from !== to ? [[from, to] as const] : [];
    }),
    removed: [...before.values()].filter(({ id }) => !after.has(id)),
  };
}

describe.each(faults)('$because', ({ rules: expected, draw }) => {
  test(`alone, it makes ${expected.join(', ')} speak and no other rule`, () => {
    const board = createBoard(corrected);
    draw(board);
    const diff = between(corrected, board.build());
    works.update(diff);
    const spoken = said(solve(works)).filter((line) => !quiet.includes(line));
    works.update(invert(diff));
    expect(said(solve(works))).toEqual(quiet);
    expect([...new Set(spoken.map((line) => line.split(' | ')[0]))].sort()).toEqual([...expected].sort());
  });
});

test('every rule of the drawing office has something to say of the first drawings', () => {
  const spoken = new Set(
    worksOf(drawAsFirstDrawn())
      .findings()
      .map(({ rule }) => rule),
  );
  const office = rules.filter(({ department }) => department === 'drawing').map(({ id }) => id);
  expect(office.filter((id) => !spoken.has(id))).toEqual([]);
});

const first = worksOf(drawAsFirstDrawn());
const names = named(first.build, first.drawing);

test('all that the drawing office finds, the gravest first, then sheet by sheet', () => {
  const found = first.findings().filter(({ department }) => department === 'drawing');
  expect(found.map(({ severity, rule, at }) => `${severity} | ${rule} | ${names.nameOf(at[0])}`)).toEqual([
    'stop | contradiction | base: crank line over bench',
    'stop | detached-piece | base: guard lug',
    'stop | body-not-placed | trunnion bracket: cheek',
    'stop | body-not-placed | trunnion bracket: pivot boss',
    'stop | body-not-placed | trunnion bracket: pivot bore',
    'stop | station-not-placed | trunnion bracket: pivot line',
    'stop | body-not-taken | over-arm: oil cup',
    'stop | body-not-placed | flywheel: belt groove',
    'stop | body-without-size | flywheel: balance hole',
    'stop | dimension-without-value | flywheel: groove diameter',
    'stop | station-not-placed | flywheel: groove floor front reach',
    'stop | station-not-placed | flywheel: groove floor rear reach',
    'stop | body-not-placed | bearing cap: bar',
    'stop | value-unreadable | bearing cap: fillet',
    'stop | body-not-placed | yoke: boss',
    'stop | body-not-placed | yoke: slot',
    'stop | body-not-placed | yoke: ram socket',
    'stop | body-shape | yoke: body',
    'stop | formula-ring | yoke: socket floor',
    'stop | station-not-placed | yoke: slot centre spacing',
    'stop | station-not-placed | yoke: half slot centre spacing',
    'stop | station-not-placed | yoke: socket floor',
    'stop | unknown-name | yoke: slot width',
    'stop | body-not-placed | ram: spigot',
    'stop | body-not-placed | ram: bar',
    'stop | body-not-placed | ram: clamp flat',
    'stop | body-not-placed | ram: file socket',
    'stop | body-not-placed | ram: clamp screw hole',
    'stop | station-not-placed | ram: yoke clamp height',
    'stop | station-not-placed | ram: length',
    'stop | station-not-placed | ram: spigot length',
    'stop | contradiction | crankshaft: length over all',
    'stop | size-not-positive | crankshaft: keyway depth',
    'stop | body-not-placed | upper rod: bar',
    'stop | body-not-placed | upper rod: file socket',
    'stop | body-not-placed | upper rod: clamp screw hole',
    'stop | part-not-drawn | clamp screw',
    'caution | bodies-coincide | base: inner pedestal ribs',
    'caution | hole-breaks-out | base: bench bolt holes',
    'caution | hole-edge-distance | base: cap screw holes',
    'caution | hole-misses | base: bearing bores as cast',
    'caution | limits-too-narrow | base: skirt height',
    'caution | wall-thin | base: pedestals',
    'caution | no-flat-datum | guide column',
    'caution | out-of-scale | guide column: flange thickness',
    'caution | wall-thin | guide column: flange',
    'caution | wall-thin | guide column: flange',
    'caution | wall-thin | guide column: flange',
    'caution | assumed-in-use | table: pivot depth',
    'caution | hole-misses | over-arm: oil hole',
    'caution | material-unknown-density | over-arm',
    'caution | name-clash | over-arm: fillet',
    'caution | limits-unreadable | flywheel: bore',
    'caution | part-without-material | yoke',
    'caution | hole-misses | crankshaft: keyway',
    'caution | part-clash | crankshaft',
    'caution | mass-absurd | crank disc',
    'caution | limits-too-narrow | crank pin: diameter',
    'caution | axis-without-datum | upper rod: lower end',
    'note | body-without-effect | base: pedestal seats',
    'note | zero-distance | base: split height',
    'note | limits-missing | guide column: running clearance',
    'note | redundant-dimension | guide column: height over all',
    'note | unused-dimension | guide column: room over yoke',
    'note | wall-minimum-unknown | over-arm',
    'note | limits-missing | crank disc: outside',
    'note | limits-missing | crank disc: face diameter',
    'note | unused-dimension | crank pin: bearing length',
    'note | part-without-bodies | table pivot',
  ]);
});

test('the gates that stay open are those of parts without a fault upstream', () => {
  const open = (gate: string) =>
    partsOf(first.build)
      .filter(({ id }) => first.gatesOf(id).some((one) => one.gate === gate && one.state === 'open'))
      .map(({ name }) => name);
  expect(open('cut')).toEqual(['crank pin', 'table pivot']);
  // Nobody has thought yet how the pivot is to be made.
  expect(open('machine')).toEqual(['crank pin']);
});

const axisOf = (part: string, axis: Axis) =>
  first.drawing.axesOf(names.part(part)).find((drawn) => drawn.axis === axis)!;

describe('contradictions', () => {
  test('the base: 28 + 67 = 95, and 59 is written; the seat may stray 0.2, the line 0.1, the third 0.3', () => {
    const { conflicts } = axisOf('base', 'Z');
    expect(conflicts).toHaveLength(1);
    const [{ loop, suspects }] = conflicts as [Conflict];
    // General tolerance of ISO 2768-1 m: ±0.2 over 6 to 30, ±0.3 over 30 to 120; ±0.1 is written at the crank height.
    expect(Math.abs(loop.closingError)).toBeCloseTo(95 - 59, 9);
    expect(loop.worstPlus).toBeCloseTo(0.2 + 0.1 + 0.3, 9);
    expect(suspects[0]).toMatchObject({
      dimension: names.dimension('base', 'crank line over bench'),
      wouldBe: 95,
      slip: 'digits-swapped',
    });
  });

  test('the crankshaft: 12 + 17.5 + 48 + 19 + 39 = 135.5, and 5.335 is written', () => {
    const { conflicts } = axisOf('crankshaft', 'Y');
    expect(conflicts).toHaveLength(1);
    const [{ dimensions, loop, suspects }] = conflicts as [Conflict];
    expect(dimensions).toHaveLength(6);
    expect(Math.abs(loop.closingError)).toBeCloseTo(135.5 - 5.335, 9);
    expect(suspects[0]).toMatchObject({
      dimension: names.dimension('crankshaft', 'length over all'),
      slip: 'inch-for-mm',
    });
    expect(suspects[0]?.wouldBe).toBeCloseTo(135.5, 9);
  });

  test('the column: 127 + 70 = 197 is only said twice', () => {
    const { loops, conflicts } = axisOf('guide column', 'Z');
    expect(conflicts).toEqual([]);
    expect(loops.map(({ verdict, closingError }) => [verdict, closingError])).toEqual([['redundant', 0]]);
  });
});

describe('the missing height of the pivots', () => {
  const pivotHeight = tie('pivot height', 'foot', 'pivot line', '48', { limits: '±0.05' });

  test('without it, pivot line and crown float apart from the foot', () => {
    expect(axisOf('trunnion bracket', 'Z').groups.map(({ stations }) => stations.map(names.nameOf))).toEqual([
      [
        'trunnion bracket: foot',
        'trunnion bracket: gusset top',
        'trunnion bracket: fillet top',
        'trunnion bracket: foot top',
      ],
      ['trunnion bracket: pivot line', 'trunnion bracket: crown'],
    ]);
  });

  test('written in, the stations fall into place, the finding goes, the gate opens', () => {
    const board = createBoard(first.build);
    drawDimension(board, 'trunnion bracket', pivotHeight, 'Z');
    const mended = worksOf(board.build());
    const { place, part } = named(mended.build, mended.drawing);
    expect(place('trunnion bracket', 'Z', 'pivot line')).toBeCloseTo(48, 9);
    // 48, and half of the boss of 22 above it.
    expect(place('trunnion bracket', 'Z', 'crown')).toBeCloseTo(59, 9);
    expect(mended.findingsOf(part('trunnion bracket'))).toEqual([]);
    expect(mended.gatesOf(part('trunnion bracket'))[0]?.state).toBe('open');
    // With the station, three bodies find their place; and its four set-ups can be judged, one of its operations be reckoned.
    expect(mended.findings()).toHaveLength(first.findings().length - 4 - 4 - 1);
  });
});

test('the ring goes from the yoke to the ram and back', () => {
  const rings = first.drawing.rings();
  expect(rings.map((ring) => ring.map(names.nameOf).sort())).toEqual([['ram: length', 'yoke: socket floor']]);
});
