import { beforeAll, describe, expect, test } from 'vitest';
import { block, cylinder } from '../../../tests/support/placed-bodies.ts';
import {
  journalOf,
  machineOf,
  type PourSketch,
  pourBody,
  sketchPour,
  sprue,
} from '../../../tests/support/sketch-pour.ts';
import type { PartId, PatternId } from '../base/ids.ts';
import { defaultPattern } from '../build/pattern.ts';
import type { Kernel } from '../solid/manifold/kernel.ts';
import { loadKernel } from '../solid/manifold/load-kernel.ts';
import { defectNamed, defects } from './defects/catalogue.ts';
import type { Evidence } from './defects/causes.ts';
import { checkAsPoured, likelyDefects, weighDefect, weighJournal } from './defects.ts';
import { checkPour } from './pour-check.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const column = {
  name: 'mast',
  bodies: [{ shape: block([-60, 60], [-50, 50], [0, 6]) }, { shape: cylinder('Z', [0, 0], [0, 66], 26) }],
};
const sketch = (more: Partial<PourSketch> = {}): PourSketch => ({
  castings: [column],
  inserts: [{ name: 'spindle', diameter: 22, length: 66, record: { around: pourBody('mast', 1) } }],
  pour: {
    gating: { ...sprue, spot: 'bottom' },
    temperature: '730',
    ambient: '20',
    journal: journalOf({ temperature: '665', defects: ['cold-shut', 'unheard-of'], result: 'scrap' }),
  },
  ...more,
});
const names: Readonly<Record<string, string>> = {
  [pourBody('mast', 1)]: 'the boss',
  [pourBody('mast', 0)]: 'the foot',
};
const evidence = (given: PourSketch): Evidence => ({
  check: checkAsPoured(sketchPour(kernel, given)),
  nameOf: (id) => names[id] ?? id,
});

describe('the catalogue', () => {
  test('ids are unique and stay; each has signs, a cause and a change; codes are of a class', () => {
    expect(new Set(defects.map(({ id }) => id)).size).toBe(defects.length);
    for (const { codes, signs, causes } of defects) {
      for (const code of codes) expect(code).toMatch(/^[A-G] \d{3}$/);
      expect(signs).not.toBe('');
      expect(causes.length).toBeGreaterThan(0);
      expect(new Set(causes.map(({ id }) => id)).size).toBe(causes.length);
      for (const { words, change } of causes) {
        expect(words).not.toBe('');
        expect(change).toMatch(/\.$/);
      }
    }
  });
  test('only codes that were read are said to be: the series B 100', () => {
    for (const { codes, codeStatus } of defects) {
      if (codeStatus === 'read') for (const code of codes) expect(code).toMatch(/^B 1(11|12|13|21|22|23)$/);
    }
  });
});

describe('causes weighed by the pour’s own figures', () => {
  test('cold metal and a cold insert, in one sentence, by what the journal says was done', () => {
    const given = sketch();
    const found = weighJournal(sketchPour(kernel, given).pour, evidence(given));
    expect(found).toHaveLength(1);
    const { sentence, causes, change } = found[0]!;
    expect(sentence).toMatch(/poured 25 K under the band/i);
    expect(sentence).toMatch(/0\.2 kg of cold mild steel in the boss, the metal round it \d+ % frozen/);
    expect(causes[0]?.weight).toBeGreaterThanOrEqual(causes[1]?.weight ?? 1);
    expect(causes.slice(0, 2).map(({ cause }) => cause.change)).toContain(change);
    // as planned it was hot enough
    const planned = weighDefect(defectNamed('cold-shut')!, {
      check: checkPour(sketchPour(kernel, given)),
      nameOf: (id) => id,
    });
    expect(planned.causes.find(({ cause }) => cause.id === 'metal-cold')?.weight).toBe(0);
  });
  test('the same defect in a hot pour with a warm insert is weighed otherwise', () => {
    const warm = sketch();
    const hot: PourSketch = {
      ...warm,
      pour: {
        ...warm.pour,
        journal: journalOf({ temperature: '750', insertTemperature: '420', defects: ['cold-shut'] }),
      },
    };
    const [cold, less] = [warm, hot].map((one) => weighDefect(defectNamed('cold-shut')!, evidence(one)));
    const weightOf = (found: typeof cold, id: string) =>
      found!.causes.find(({ cause }) => cause.id === id)?.weight ?? -1;
    for (const id of ['metal-cold', 'insert-cold']) expect(weightOf(less, id)).toBeLessThan(weightOf(cold, id));
    expect(less?.sentence ?? '').not.toContain('frozen');
  });
  test('a damp coating leads gas porosity; a dry one speaks against it', () => {
    const pattern = (grams: readonly number[]) => ({
      ...defaultPattern('pattern:p' as PatternId, 'part:mast' as PartId, 'p', 1),
      bare: '20 g',
      scaleStep: '0.05 g',
      weighings: grams.map((mass, i) => ({ at: `2026-05-0${1 + i}T08:00:00Z`, mass: `${mass} g`, where: '' })),
    });
    const foam = (grams: readonly number[]): PourSketch => ({
      castings: [{ ...column, moulding: 'foam in dry sand', foamDensity: '22 kg/m³' }],
      patterns: [pattern(grams)],
      pour: {
        gating: sprue,
        temperature: '740',
        castings: [{ part: 'part:mast' as PartId, count: 1, up: '+Z', pattern: 'pattern:p' as PatternId }],
      },
    });
    const gas = (grams: readonly number[]) => weighDefect(defectNamed('gas-porosity')!, evidence(foam(grams)));
    expect(gas([180, 150, 140]).causes[0]?.cause.id).toBe('damp');
    expect(gas([180, 150, 140]).sentence).toContain('not proved dry');
    expect(gas([180, 140, 140, 140]).causes.find(({ cause }) => cause.id === 'damp')?.weight).toBe(0);
  });
  test('a boss that is cut off leads shrinkage; with its riser it does not', () => {
    const lever = {
      name: 'crank arm',
      bodies: [
        { shape: cylinder('Z', [0, 0], [0, 30], 20) },
        { shape: block([0, 120], [-15, 15], [11, 19]) },
        { shape: cylinder('Z', [120, 0], [0, 40], 25) },
      ],
    };
    const pour = { gating: sprue, temperature: '730' };
    const found = weighDefect(defectNamed('shrinkage')!, evidence({ castings: [lever], pour }));
    expect(found.causes[0]).toMatchObject({ cause: { id: 'not-fed' } });
    expect(found.sentence).toContain('is cut off by metal of');
    const risers = [0, 2].map((i) => ({ name: 'r', on: pourBody('crank arm', i), diameter: '60', height: '90' }));
    const fed = weighDefect(defectNamed('shrinkage')!, evidence({ castings: [lever], pour: { ...pour, risers } }));
    expect(fed.causes.find(({ cause }) => cause.id === 'not-fed')?.weight).toBeLessThan(0.1);
  });
  test('short metal, and a cope that lifts', () => {
    const flask = machineOf('box', 'flask', {
      insideLength: '200',
      insideWidth: '180',
      copeHeight: '40',
      dragHeight: '80',
    });
    const given: PourSketch = {
      castings: [column],
      machines: [flask],
      pour: {
        flask: flask.id,
        gating: { ...sprue, sprueHeight: '200' },
        temperature: '730',
        journal: journalOf({ charged: '0.8 kg', defects: ['misrun', 'wrong-size'] }),
      },
    };
    const [misrun, size] = weighJournal(sketchPour(kernel, given).pour, evidence(given));
    expect(misrun?.causes[0]).toMatchObject({ cause: { id: 'metal-short' }, weight: 1 });
    expect(size?.causes[0]).toMatchObject({ cause: { id: 'mould-moved' } });
    expect(size?.sentence).toContain('kg of weight were wanting on the cope');
  });
  test('what may come of a pour: iron’s hard spots are not told of aluminium', () => {
    const likely = likelyDefects(evidence(sketch()));
    expect(likely.map(({ defect }) => defect.id)).toContain('cold-shut');
    expect(likely.map(({ defect }) => defect.id)).not.toContain('hard-spots');
    const ranks = likely.map(({ causes }) => causes[0]!.weight!);
    expect(ranks).toEqual([...ranks].sort((a, b) => b - a));
  });
});
