import type { AnyRule } from './rule.ts';

const modules = import.meta.glob<AnyRule>(['./rules/*/*.ts', '!./rules/*/*.test.ts'], {
  eager: true,
  import: 'default',
});

/** Every rule under `rules/<department>/`, by id. Adding a file there is all it takes. */
export const rules: readonly AnyRule[] = Object.values(modules).sort((a, b) => (a.id < b.id ? -1 : 1));

const byId = new Map(rules.map((rule) => [rule.id, rule]));

/** @returns undefined for a rule of another release, whose id an old acceptance may still carry. */
export const ruleById = (id: string): AnyRule | undefined => byId.get(id);
