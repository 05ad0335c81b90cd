import { describe, expect, test } from 'vitest';
import { findingKey } from '../../src/shared/check/finding.ts';
import type { AnyRule, BuildFacts, BuildRule, PartFacts, PartRule, Said } from '../../src/shared/check/rule.ts';
import { fillPlaceholders } from '../../src/shared/check/words.ts';

interface Case<F> {
  readonly name: string;
  readonly facts: F;
}

interface Cases<F, M extends string> {
  readonly passes: readonly Case<F>[];
  readonly finds: readonly (Case<F> & { readonly findings: readonly Said<M>[] })[];
}

/** Freezes all the way down, so that a rule that writes into its facts is caught. */
function freeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) freeze(inner);
  }
  return value;
}

const placeholders = (text: string): readonly string[] => [...text.matchAll(/\{(\w+)\}/g)].map((match) => match[1]!);

/**
 * Runs a rule over a table of cases. It also fails if some message is never produced, if a placeholder of a message or of
 * its remedy has no value, if two findings share a key, or if a second run says otherwise than the first.
 */
export function testRule<N extends keyof PartFacts, M extends string>(
  rule: PartRule<N, M>,
  cases: Cases<Pick<PartFacts, N>, M>,
): void;
export function testRule<N extends keyof BuildFacts, M extends string>(
  rule: BuildRule<N, M>,
  cases: Cases<Pick<BuildFacts, N>, M>,
): void;
export function testRule(rule: AnyRule, cases: Cases<object, string>): void {
  const check = (facts: object): readonly Said[] => {
    const frozen = freeze(facts) as PartFacts & BuildFacts;
    const said = rule.check(frozen);
    expect(rule.check(frozen)).toEqual(said);
    const keys = said.map(({ message, at }) => findingKey(rule.id, message, at));
    expect(new Set(keys).size).toBe(keys.length);
    return said;
  };
  describe(rule.id, () => {
    test.each([...cases.passes])('passes: $name', ({ facts }) => {
      expect(check(facts)).toEqual([]);
    });
    test.each([...cases.finds])('finds: $name', ({ facts, findings }) => {
      expect(check(facts)).toEqual(findings);
    });
    test('every message has a case, and every placeholder a value', () => {
      const found = cases.finds.flatMap(({ findings }) => findings);
      expect(new Set(found.map(({ message }) => message))).toEqual(new Set(Object.keys(rule.messages)));
      expect(Object.keys(rule.remedies).sort()).toEqual(Object.keys(rule.messages).sort());
      for (const { message, data } of found) {
        for (const name of [
          ...placeholders(rule.messages[message] ?? ''),
          ...placeholders(rule.remedies[message] ?? ''),
        ]) {
          expect([rule.id, message, fillPlaceholders(`{${name}}`, data ?? {}, 'mm')]).not.toContain(`{${name}}`);
        }
      }
    });
    test('its words are sentences', () => {
      for (const text of [...Object.values(rule.messages), ...Object.values(rule.remedies)]) {
        expect(text).toMatch(/^[A-Z{"].*[.}]$/s);
        expect(text).not.toMatch(/!|invalid/i);
      }
    });
  });
}
