import { beforeAll, describe, expect, test } from 'vitest';
import {
  block,
  corner,
  cylinder,
  type HandMade,
  prism,
  solidOf,
  THE_PART,
  turned,
} from '../../../tests/support/placed-bodies.ts';
import { allOf } from '../base/pieces.ts';
import type { Kernel } from '../solid/manifold/kernel.ts';
import { loadKernel } from '../solid/manifold/load-kernel.ts';
import { type CastingSolid, drawnCasting } from './casting-solid.ts';
import { modulusOf } from './freezing.ts';
import { paintSections, sectionsOf } from './hot-spots.ts';
import { gridFor } from './sections/cell-grid.ts';
import { cutIntoCells } from './sections/cut-into-cells.ts';
import type { Sections } from './sections.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

function casting(bodies: readonly HandMade[]): CastingSolid {
  const made = drawnCasting(THE_PART, solidOf(kernel, bodies).solids);
  if (!made) throw new Error('no solid');
  return made;
}
const CELLS = 25_000;
const sections = (bodies: readonly HandMade[], cells = CELLS): Sections =>
  allOf(sectionsOf(casting(bodies), cells)).sections;
const sphere = (radius: number): HandMade => ({
  shape: turned(
    'Z',
    [0, 0],
    Array.from({ length: 41 }, (_, i) => {
      const angle = (Math.PI * i) / 40;
      return [radius * Math.cos(angle), i % 40 === 0 ? 0 : radius * Math.sin(angle)] as const;
    }),
  ),
});
/** Within a share of what is expected. */
const near = (found: number | undefined, expected: number, share: number): void => {
  expect(found).toBeGreaterThan(expected * (1 - share));
  expect(found).toBeLessThan(expected * (1 + share));
};

describe('cut into cells', () => {
  test('all volume and all surface is in the cells, whatever the shape and however thin it is', () => {
    for (const bodies of [
      [{ shape: block([0, 50.3], [0, 31], [0, 0.3]) }],
      [{ shape: cylinder('X', [3, 4], [0, 40], 12) }, { shape: cylinder('Z', [10, 4], [-20, 20], 5), adds: false }],
      [sphere(17), { shape: block([0, 40], [-2, 2], [-3, 3]) }],
    ]) {
      const solid = casting(bodies);
      const cut = allOf(cutIntoCells(solid, gridFor(solid.box, solid.volumeMm3, 5_000)));
      const { vertices, triangles } = solid.mesh;
      let six = 0;
      for (let t = 0; t < triangles.length; t += 3) {
        const [a, b, c] = [0, 1, 2].map((k) =>
          Array.from(vertices.subarray(3 * triangles[t + k]!, 3 * triangles[t + k]! + 3)),
        );
        six +=
          a![0]! * (b![1]! * c![2]! - b![2]! * c![1]!) +
          a![1]! * (b![2]! * c![0]! - b![0]! * c![2]!) +
          a![2]! * (b![0]! * c![1]! - b![1]! * c![0]!);
      }
      const sum = (list: ArrayLike<number>): number =>
        Array.prototype.reduce.call(list, (s, x) => (s as number) + (x as number), 0) as number;
      expect(sum(cut.volumes) / (six / 6)).toBeCloseTo(1, 6);
      expect(sum(cut.areas) / sum(cut.areaOf)).toBeCloseTo(1, 5);
      near(sum(cut.areas), solid.areaMm2, 0.002);
    }
  });
});

describe('moduli of simple sections, by the formulas of their V/A (worked out by hand)', () => {
  test('wide plates: half the thickness', () => {
    for (const thickness of [6, 12, 20]) {
      const { zones, thinnest } = sections([{ shape: block([0, 200], [0, 180], [0, thickness]) }], 60_000);
      near(zones[0]!.modulusMm, modulusOf.plate(thickness), thickness < 10 ? 0.12 : 0.06);
      expect(thinnest?.thicknessMm).toBeCloseTo(thickness, 4);
    }
  });
  test('long bars: a quarter of the side, a quarter of the diameter', () => {
    near(sections([{ shape: block([0, 300], [0, 20], [0, 20]) }]).bodies[0]!.usualMm, modulusOf.longBar(20), 0.06);
    near(sections([{ shape: cylinder('X', [0, 0], [0, 300], 15) }]).bodies[0]!.usualMm, 7.5, 0.06);
  });
  test('a bar that lies askew to the cells freezes like one that does not', () => {
    const [c, s] = [Math.cos(0.6), Math.sin(0.6)];
    const at = (u: number, v: number) => corner(u * c - v * s, u * s + v * c);
    const askew = prism('Z', [0, 20], [at(0, 0), at(300, 0), at(300, 20), at(0, 20)]);
    near(sections([{ shape: askew }], 40_000).bodies[0]!.usualMm, modulusOf.longBar(20), 0.08);
  });
  test('ball, cube, cylinder as high as wide: a sixth', () => {
    near(sections([sphere(30)]).zones[0]!.modulusMm, modulusOf.sphere(60), 0.06);
    near(sections([{ shape: block([0, 50], [0, 50], [0, 50]) }]).zones[0]!.modulusMm, modulusOf.cube(50), 0.06);
    near(
      sections([{ shape: cylinder('Y', [0, 0], [0, 50], 25) }]).zones[0]!.modulusMm,
      modulusOf.cylinder(50, 50),
      0.06,
    );
  });
  test('metal in grains of any fineness says the same to within the cells', () => {
    const bar = [{ shape: block([0, 120], [0, 16], [0, 30]) }];
    const exact = (16 * 30) / (2 * (16 + 30));
    for (const cells of [4_000, 12_000, 40_000]) near(sections(bar, cells).bodies[0]!.usualMm, exact, 0.08);
  });
});

describe('where webs meet', () => {
  // Heuvers' circles: a junction freezes by the largest circle in it against that in the web (foundry texts, from memory)
  const web = (...more: readonly HandMade[]) => [{ shape: block([-60, 60], [0, 120], [0, 12]) }, ...more];
  test('T of equal webs: the circle is 1.25 times as wide; the place that freezes last is the junction', () => {
    const { zones } = sections(web({ shape: block([-6, 6], [0, 120], [0, 80]) }), 60_000);
    near(zones[0]!.modulusMm / 6, 1.25, 0.08);
    expect(zones[0]!.at[0]).toBeCloseTo(0, -0.5);
    expect(zones[0]!.at[2]).toBeLessThan(14);
  });
  test('crossing webs more than a T, a T more than an L, an L more than a plain web', () => {
    const most = (bodies: readonly HandMade[]) => sections(bodies, 60_000).zones[0]!.modulusMm;
    const plain = most(web());
    const l = most(web({ shape: block([-60, -48], [0, 120], [0, 80]) }));
    const t = most(web({ shape: block([-6, 6], [0, 120], [0, 80]) }));
    const x = most(web({ shape: block([-6, 6], [0, 120], [-60, 80]) }));
    expect(l).toBeGreaterThan(plain * 1.01);
    expect(t).toBeGreaterThan(l * 1.1);
    expect(x).toBeGreaterThan(t * 1.1);
    // the circle in a cross is √2 as wide as the web
    near(x / 6, Math.SQRT2, 0.08);
  });
});

describe('hot spots', () => {
  const dumbbell: readonly HandMade[] = [
    { shape: cylinder('Z', [0, 0], [0, 30], 20) },
    { shape: block([0, 120], [-15, 15], [11, 19]) },
    { shape: cylinder('Z', [120, 0], [0, 40], 25) },
  ];
  test('a hub on a web has its own V/A, the joined face left out of its surface', () => {
    const { zones, bodies } = sections(dumbbell.slice(0, 2), 50_000);
    const volume = Math.PI * 20 ** 2 * 30;
    const surface = 2 * Math.PI * 20 ** 2 + 2 * Math.PI * 20 * 30 - 30 * 8;
    expect(zones).toHaveLength(1);
    near(zones[0]!.modulusMm, volume / surface, 0.06);
    expect(bodies.map(({ body }) => body)).toEqual(['body:1', 'body:0']);
    near(bodies[0]!.usualMm, (30 * 8) / (2 * 38), 0.1);
  });
  test('two hubs joined by a web are two zones; the lesser one is cut off by the web before it freezes', () => {
    const { zones, necks } = sections(dumbbell, 50_000);
    expect(zones.map(({ bodies }) => bodies[0])).toEqual(['body:2', 'body:0']);
    expect(zones[0]!.neckMm).toBeUndefined();
    expect(zones[0]!.at[0]).toBeCloseTo(120, -0.5);
    expect(zones[1]!.neckMm).toBeLessThan(zones[1]!.modulusMm * 0.75);
    expect(necks).toHaveLength(1);
    expect(necks[0]!.at[0]).toBeGreaterThan(20);
    expect(necks[0]!.at[0]).toBeLessThan(95);
    const whole = Math.PI * 20 ** 2 * 30 + Math.PI * 25 ** 2 * 40;
    expect(zones[0]!.volumeMm3 + zones[1]!.volumeMm3).toBeGreaterThan(whole);
  });
  test('joined by metal as thick as themselves they are one', () => {
    const bar = [dumbbell[0]!, dumbbell[2]!, { shape: block([0, 120], [-20, 20], [0, 30]) }];
    expect(sections(bar).zones).toHaveLength(1);
  });
  test('turned, moved and mirrored, a casting has the same moduli', () => {
    const turnedRound: readonly HandMade[] = [
      { shape: cylinder('X', [7, 100], [5, 35], 20) },
      { shape: block([16, 24], [-8, 22], [-20, 100]) },
      { shape: cylinder('X', [7, -20], [5, 45], 25) },
    ];
    const [a, b] = [sections(dumbbell, 50_000), sections(turnedRound, 50_000)];
    expect(b.zones).toHaveLength(2);
    for (const i of [0, 1]) near(b.zones[i]!.modulusMm, a.zones[i]!.modulusMm, 0.03);
    near(b.zones[1]!.neckMm, a.zones[1]!.neckMm!, 0.05);
  });
});

describe('walls and shadows', () => {
  test('the thinnest wall is one that is broad, not the metal between a hole and an edge', () => {
    const plate = [
      { shape: block([0, 120], [0, 80], [0, 9]) },
      { shape: block([0, 120], [0, 6], [0, 50]) },
      { shape: cylinder('Z', [8, 70], [-1, 10], 6), adds: false },
    ];
    const { thinnest } = sections(plate);
    expect(thinnest?.thicknessMm).toBeCloseTo(6, 4);
    expect(thinnest?.body).toBe('body:1');
    near(thinnest?.modulusMm, 3, 0.15);
  });
  test('a ball and a cube have no walls', () => {
    expect(sections([sphere(20)], 8_000).thinnest).toBeUndefined();
    expect(sections([{ shape: block([0, 50], [0, 50], [0, 50]) }], 8_000).thinnest).toBeUndefined();
  });
  test('shadows: of a block its faces; of a ball and a lying bar their circles and strips, with what lies over them', () => {
    const of = (bodies: readonly HandMade[]) => sections(bodies).shadows;
    const solid = of([{ shape: block([0, 60], [0, 40], [0, 25]) }]);
    expect(solid['+Z'].areaMm2).toBeCloseTo(2400, 3);
    expect(solid['-X'].areaMm2).toBeCloseTo(1000, 3);
    expect(solid['+Z'].spaceAboveMm3).toBeCloseTo(0, 3);
    const ball = of([sphere(30)])['+Y'];
    near(ball.areaMm2, Math.PI * 900, 0.01);
    // a cylinder about a half ball less the half ball: πr³/3
    near(ball.spaceAboveMm3, (Math.PI * 27_000) / 3, 0.03);
    const bar = of([{ shape: cylinder('X', [0, 0], [0, 100], 15) }])['-Z'];
    near(bar.areaMm2, 3000, 0.01);
    near(bar.spaceAboveMm3, 100 * (30 * 15 - (Math.PI * 225) / 2), 0.03);
  });
  test('under a flange lies a foot: only the flange is seen from above', () => {
    const { shadows } = sections([
      { shape: block([0, 60], [0, 40], [0, 10]) },
      { shape: block([20, 40], [10, 30], [0, 50]) },
      { shape: block([0, 60], [0, 40], [40, 50]) },
    ]);
    expect(shadows['+Z'].areaMm2).toBeCloseTo(2400, 1);
    expect(shadows['+Z'].spaceAboveMm3).toBeCloseTo(0, 1);
  });
});

describe('painted surface', () => {
  test('a flat face shows what is thick behind its middle, without gaps', () => {
    const solid = casting([
      { shape: block([0, 120], [0, 120], [0, 8]) },
      { shape: cylinder('Z', [60, 60], [8, 40], 20) },
    ]);
    const painted = paintSections(solid, allOf(sectionsOf(solid, CELLS)));
    const at = (x: number, y: number) => {
      let [best, off] = [0, Infinity];
      painted.moduli.forEach((modulus, i) => {
        const [px, py, pz] = painted.vertices.subarray(3 * i, 3 * i + 3);
        const away = Math.hypot(px! - x, py! - y, pz!);
        if (away < off) [best, off] = [modulus, away];
      });
      return best;
    };
    expect(at(60, 60)).toBeGreaterThan(1.4 * at(15, 100));
    // closed: each edge is met once in each direction
    const edges = new Map<string, number>();
    const { triangles } = painted;
    for (let t = 0; t < triangles.length; t += 3) {
      for (let k = 0; k < 3; k++) {
        const [a, b] = [triangles[t + k]!, triangles[t + ((k + 1) % 3)]!];
        const key = a < b ? `${a}/${b}` : `${b}/${a}`;
        edges.set(key, (edges.get(key) ?? 0) + (a < b ? 1 : -1));
      }
    }
    expect([...edges.values()].every((sum) => sum === 0)).toBe(true);
  });
});

test('the work may be left at any piece', () => {
  const solid = casting([{ shape: block([0, 50], [0, 50], [0, 10]) }]);
  for (const pieces of [1, 3, 8]) {
    const work = sectionsOf(solid, 4_000);
    for (let i = 0; i < pieces; i++) work.next();
  }
  expect(allOf(sectionsOf(solid, 4_000)).sections.zones).toHaveLength(1);
});
