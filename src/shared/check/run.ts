import type { AnyRule, BuildFacts, PartFacts, Said } from './rule.ts';

type Facts = Readonly<Record<string, unknown>>;

/** What a rule said, with the facts that it said it of. */
interface Run {
  readonly facts: Facts;
  readonly said: readonly Said[];
}

/** What each rule last said of one part, or of the build. */
export type Runs = ReadonlyMap<AnyRule, Run>;

/** Runs the rules of one scope: again only where a fact that the rule needs is another than before. */
export function runRules(rules: readonly AnyRule[], facts: PartFacts | BuildFacts, before: Runs | undefined): Runs {
  const runs = new Map<AnyRule, Run>();
  for (const rule of rules) {
    const needed = pick(facts as unknown as Facts, rule.needs);
    const earlier = before?.get(rule);
    runs.set(rule, earlier && sameFacts(earlier.facts, needed) ? earlier : { facts: needed, said: say(rule, needed) });
  }
  return runs;
}

/** A rule gets what it asked for and nothing else, so that it cannot hang on something that would not wake it. */
function pick(facts: Facts, needs: readonly string[]): Facts {
  return Object.fromEntries(needs.map((need) => [need, facts[need]]));
}

const sameFacts = (a: Facts, b: Facts): boolean => Object.keys(b).every((name) => a[name] === b[name]);

function say(rule: AnyRule, facts: Facts): readonly Said[] {
  return rule.scope === 'part' ? rule.check(facts as unknown as PartFacts) : rule.check(facts as unknown as BuildFacts);
}
