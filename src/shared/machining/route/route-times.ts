import type { OperationId } from '../../base/ids.ts';
import type { Setup } from '../../build/setup.ts';
import { readRate } from '../../plan/read-rate.ts';
import { setupMinutes } from '../../tables/cutting-practice.ts';
import type { Sourced } from '../../tables/cutting-row.ts';
import type { OperationFact } from './operation-fact.ts';

/** One taking up of the work, in route order, with what is done in it. */
export interface Holding {
  /** Undefined at the bench. */
  readonly setup: Setup | undefined;
  readonly operations: readonly OperationId[];
  /** To set it up: as written in its record, else what is usual for the way of holding; 0 at the bench. */
  readonly setupMinutes: number;
  /** Undefined where the user gave the figure. */
  readonly usual: Sourced | undefined;
  /** Of its operations together; undefined when that of any is not known. */
  readonly minutes: number | undefined;
}

export interface RouteTimes {
  readonly holdings: readonly Holding[];
  /** Setting up, all holdings together. */
  readonly setupMinutes: number;
  /** What is known of the operations' times together. */
  readonly minutes: number;
  /** Operations of which no time is known: the sum is at least so much. */
  readonly without: readonly OperationId[];
  /** One part: setting up and operations. */
  readonly perPart: number;
  /** So many of them, each holding set up once for all. */
  readonly perLot: number;
}

/**
 * Times of a route as it stands in its list.
 *
 * @param quantity of the part; set-ups are made once for all of them.
 */
export function routeTimes(facts: readonly OperationFact[], quantity: number): RouteTimes {
  const holdings: Holding[] = [];
  const groups: OperationFact[][] = [];
  facts.forEach((fact, i) => {
    if (i > 0 && facts[i - 1]!.setup?.id === fact.setup?.id) groups.at(-1)!.push(fact);
    else groups.push([fact]);
  });
  for (const group of groups) {
    const { setup } = group[0]!;
    const { minutes: setting, usual } = settingMinutes(setup);
    const worked = group.map(({ minutes }) => minutes);
    holdings.push({
      setup,
      operations: group.map(({ record }) => record.id),
      setupMinutes: setting,
      usual,
      minutes: worked.some((one) => one === undefined) ? undefined : sum(worked),
    });
  }
  const setting = sum(holdings.map((holding) => holding.setupMinutes));
  const minutes = sum(facts.map((fact) => fact.minutes));
  return {
    holdings,
    setupMinutes: setting,
    minutes,
    without: facts.filter((fact) => fact.minutes === undefined).map(({ record }) => record.id),
    perPart: setting + minutes,
    perLot: setting + quantity * minutes,
  };
}

const sum = (values: readonly (number | undefined)[]): number =>
  values.reduce<number>((total, value) => total + (value ?? 0), 0);

function settingMinutes(setup: Setup | undefined): { readonly minutes: number; readonly usual: Sourced | undefined } {
  if (!setup) return { minutes: 0, usual: undefined };
  const own = readRate(setup.minutes, 'minutes');
  if (own.ok && own.value !== undefined) return { minutes: own.value, usual: undefined };
  const { value, ...usual } = setupMinutes[setup.holding.as];
  return { minutes: value, usual };
}
