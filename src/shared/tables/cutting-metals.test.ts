import { describe, expect, test } from 'vitest';
import { type CuttingMetal, cuttingMetals, findMetal, metalNamed } from './cutting-metals.ts';
import { materials } from './materials.ts';

describe('a metal by its name', () => {
  test.each<[string, CuttingMetal | undefined]>([
    ['aluminium', 'cast aluminium'],
    ['EN AC-42100 AlSi7Mg0.3', 'cast aluminium'],
    ['LM25', 'cast aluminium'],
    ['aluminium bar', 'wrought aluminium'],
    ['6082-T6', 'wrought aluminium'],
    ['aluminium bronze', 'hard bronze'],
    ['phosphor bronze', 'hard bronze'],
    ['bronze', 'bronze'],
    ['gun metal', 'bronze'],
    ['brass', 'brass'],
    ['ZA-12', 'zinc alloy'],
    ['cast iron', 'soft grey iron'],
    ['GG25', 'hard grey iron'],
    ['SG iron', 'ductile iron'],
    ['wrought iron', 'mild steel'],
    ['mild steel', 'mild steel'],
    ['silver steel', 'tool steel'],
    ['cast steel', 'cast steel'],
    ['stainless steel', 'stainless steel'],
    ['oak', undefined],
    ['', undefined],
  ])('%s is %s', (name, metal) => {
    expect(metalNamed(name)).toBe(metal);
  });

  test('the words of every name in the table of materials tell its own row, or nothing', () => {
    for (const { name, also, cuttingMetal } of materials) {
      for (const called of [name, ...also]) {
        // Silver steel weighs what steel weighs, but is cut as a tool steel.
        if (called === 'silver steel') continue;
        expect([undefined, cuttingMetal], called).toContain(metalNamed(called));
      }
    }
  });
});

describe('a material as a row of the tables', () => {
  test('by the words of its name, where they agree with its group', () => {
    expect(findMetal('scrap aluminium', undefined, undefined)).toEqual({ metal: 'cast aluminium', by: 'name' });
    expect(findMetal('scrap aluminium', 'N', undefined)).toEqual({ metal: 'cast aluminium', by: 'name' });
    expect(findMetal('iron of the old bed', 'P', undefined)).toEqual({ metal: 'medium steel', by: 'group' });
  });

  test('by its row in the table of materials', () => {
    expect(findMetal('304', 'M', 'stainless steel')?.metal).toBe('stainless steel');
    expect(findMetal('EN-GJS-500-7', 'K', 'ductile iron')).toEqual({ metal: 'ductile iron', by: 'table' });
  });

  test('by its group alone', () => {
    for (const [group, metal] of [
      ['P', 'medium steel'],
      ['M', 'stainless steel'],
      ['K', 'hard grey iron'],
      ['N', 'bronze'],
    ] as const) {
      expect(findMetal('mystery', group, undefined)).toEqual({ metal, by: 'group' });
    }
  });

  test('nothing known, nothing guessed', () => {
    expect(findMetal('mystery', undefined, undefined)).toBeUndefined();
  });

  test('every material of the table has a row', () => {
    for (const { cuttingMetal } of materials) expect(cuttingMetals).toContain(cuttingMetal);
  });
});
