import { describe, expect, test } from 'vitest';
import type { AlloyId } from '../base/ids.ts';
import { alloyNamed } from '../tables/alloys.ts';
import { alloyOf, alloySchema, crossedIn, type OwnAlloy } from './alloy.ts';

const own = (name: string, figures: OwnAlloy['figures'], source = ''): OwnAlloy => ({
  kind: 'alloy',
  id: 'alloy:own' as AlloyId,
  name,
  family: 'aluminium',
  figures,
  source,
});

describe('an alloy of the build’s own', () => {
  test('takes from the table what it leaves out, and says whose each figure is', () => {
    const table = alloyNamed('LM25')!;
    const made = alloyOf(own('LM25', { contractionUsual: 1.15 }, 'two bars'));
    expect(made.name).toBe('LM25');
    expect(made.figures.contractionUsual).toEqual({ value: 1.15, status: 'written', source: 'two bars' });
    expect(made.figures.liquidusC).toBe(table.figures.liquidusC);
    expect(Object.keys(made.figures).sort()).toEqual(Object.keys(table.figures).sort());
  });

  test('may contract more or less than others published: their range then reaches as far', () => {
    const range = (contractionUsual: number) => {
      const { contractionLeast: least, contractionMost: most } = alloyOf(own('LM25', { contractionUsual })).figures;
      return [least?.value, least?.status, most?.value, most?.status];
    };
    expect(range(1.1)).toEqual([1.1, 'written', 1.82, 'read']);
    expect(range(2)).toEqual([1.25, 'read', 2, 'written']);
    expect(range(1.4)).toEqual([1.25, 'read', 1.82, 'read']);
  });

  test('that no table knows has its own figures alone', () => {
    const { figures } = alloyOf(own('pistons and cans', { liquidusC: 590 }));
    expect(figures).toEqual({ liquidusC: { value: 590, status: 'written', source: 'the build’s own row' } });
  });

  test('is made once for each record, and found by its name before the table', () => {
    const record = own('lm25', { liquidusC: 601 });
    expect(alloyOf(record)).toBe(alloyOf(record));
    expect(alloyNamed('LM25', [alloyOf(record)])?.figures.liquidusC?.value).toBe(601);
  });
});

test.each<[string, OwnAlloy['figures'], string | undefined]>([
  ['none', {}, undefined],
  ['equal ones', { solidusC: 577, liquidusC: 577 }, undefined],
  ['a solidus over the liquidus', { solidusC: 620, liquidusC: 600 }, 'solidus'],
  ['a liquidus under the solidus of the table', { liquidusC: 500 }, 'solidus'],
  ['a usual contraction outside what others published', { contractionUsual: 2.5 }, undefined],
  ['a usual contraction over one’s own greatest', { contractionUsual: 1.9, contractionMost: 1.5 }, 'usual contraction'],
  ['a usual contraction under one’s own least', { contractionUsual: 0.5, contractionLeast: 0.9 }, 'least contraction'],
  ['pouring from hot to cold', { pourLeastC: 760, pourMostC: 700 }, 'coldest pouring temperature'],
])('figures that stand the wrong way round: %s', (_, figures, low) => {
  expect(crossedIn(alloyOf(own('LM25', figures)))?.low).toBe(low);
});

test.each<[string, object, boolean]>([
  ['a density', { solidDensityKgM3: 2680 }, true],
  ['a density of nought', { solidDensityKgM3: 0 }, false],
  ['a loss of everything', { meltLoss: 100 }, false],
  ['a growth while freezing', { freezingShrinkage: -2 }, true],
  ['a contraction of a half', { contractionUsual: 50 }, false],
  ['a figure that is none', { hardness: 60 }, false],
])('within reason: %s', (_, figures, isKept) => {
  expect(alloySchema.safeParse(own('a', figures)).success).toBe(isKept);
});
