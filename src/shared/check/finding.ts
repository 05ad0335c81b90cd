import type { PartId } from '../base/ids.ts';
import type { Acceptance } from '../build/acceptance.ts';
import type { AnyRule, Finding, Said } from './rule.ts';

/** `rule/message@id,id…`: the same finding keeps the same key over edits. */
export const findingKey = (rule: string, message: string, at: readonly string[]): string =>
  `${rule}/${message}@${at.join(',')}`;

/** Digits that count when figures are compared: what lies beyond is noise of the arithmetic, not a change of the drawing. */
export const FIGURE_DIGITS = 10;

/** A finding's figures as one text, to be compared with what they were when it was accepted. */
export function figuresOf(data: Finding['data']): string {
  const entries = Object.keys(data)
    .sort()
    .map((name) => {
      const value = data[name];
      return [name, typeof value === 'number' ? Number(value.toPrecision(FIGURE_DIGITS)) : value];
    });
  return JSON.stringify(entries);
}

/** Acceptances by the key of the finding that they accept, latest first. */
export type AcceptancesByKey = ReadonlyMap<string, readonly Acceptance[]>;

export function acceptancesByKey(acceptances: Iterable<Acceptance>): AcceptancesByKey {
  const byKey = new Map<string, Acceptance[]>();
  for (const acceptance of acceptances) {
    const list = byKey.get(acceptance.finding);
    if (list) list.push(acceptance);
    else byKey.set(acceptance.finding, [acceptance]);
  }
  for (const list of byKey.values()) {
    list.sort((a, b) => (a.acceptedAt > b.acceptedAt ? -1 : a.acceptedAt < b.acceptedAt ? 1 : a.id < b.id ? -1 : 1));
  }
  return byKey;
}

/** What the rule said, made complete: severity and gates from the rule, and whether an acceptance holds for it. */
export function findingOf(rule: AnyRule, said: Said, part: PartId | undefined, accepted: AcceptancesByKey): Finding {
  const key = findingKey(rule.id, said.message, said.at);
  const data = said.data ?? {};
  const given = rule.acceptable ? (accepted.get(key) ?? []) : [];
  const holding = given.length === 0 ? undefined : given.find(({ figures }) => figures === figuresOf(data));
  return {
    key,
    rule: rule.id,
    message: said.message,
    severity: rule.severity,
    department: rule.department,
    shuts: rule.shuts,
    acceptable: rule.acceptable,
    part,
    at: said.at,
    data,
    accepted: holding,
    lapsed: holding ? undefined : given[0],
  };
}

/** Whether two findings say the same, acceptance included. */
export const sameFinding = (a: Finding, b: Finding): boolean =>
  a.key === b.key &&
  a.part === b.part &&
  a.severity === b.severity &&
  a.accepted === b.accepted &&
  a.lapsed === b.lapsed &&
  sameData(a.data, b.data);

function sameData(a: Finding['data'], b: Finding['data']): boolean {
  const names = Object.keys(a);
  return names.length === Object.keys(b).length && names.every((name) => Object.is(a[name], b[name]));
}
