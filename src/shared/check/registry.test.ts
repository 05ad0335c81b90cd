import { expect, test } from 'vitest';
import { rules } from './registry.ts';
import { fillPlaceholders } from './words.ts';

const files = Object.keys(import.meta.glob('./rules/*/*.ts'));

test('every rule is named after its file, stands in the folder of its department and has a test beside it', () => {
  expect(rules.length).toBeGreaterThan(0);
  for (const rule of rules) {
    expect(files).toContain(`./rules/${rule.department}/${rule.id}.ts`);
    expect(files).toContain(`./rules/${rule.department}/${rule.id}.test.ts`);
  }
  expect(rules).toHaveLength(files.filter((file) => !file.endsWith('.test.ts')).length);
  expect(new Set(rules.map((rule) => rule.id)).size).toBe(rules.length);
});

test('a stop shuts a gate and cannot be taken on oneself; a note shuts none', () => {
  for (const rule of rules) {
    if (rule.severity === 'stop') expect([rule.id, rule.shuts.length > 0]).toEqual([rule.id, true]);
    if (rule.severity === 'note') expect([rule.id, rule.shuts]).toEqual([rule.id, []]);
  }
});

test('a placeholder without a value stays as it is, so that it is seen', () => {
  expect(fillPlaceholders('{name} and {other}', { name: 'bore' }, 'mm')).toBe('bore and {other}');
});
