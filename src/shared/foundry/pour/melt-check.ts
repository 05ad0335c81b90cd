import type { MachineId } from '../../base/ids.ts';
import type { Machine } from '../../build/machine.ts';
import { readFigures } from '../../plan/machine-figures-read.ts';
import { foundryPractice } from '../../tables/foundry-practice.ts';
import { meltsFor } from '../charge.ts';
import { type Figure, fromTable, weakest, worked } from '../figure.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';
import { heatToPour, minutesToHeat, rateOfMelt } from '../heat.ts';
import type { PourInput } from '../pour-input.ts';
import type { ChargeCheck } from './charge-check.ts';
import { type PourAlloy, pourAlloy } from './pour-alloy.ts';
import { readPour } from './read-pour.ts';
import { type PourVerdict, verdict, type Way } from './verdict.ts';

/** Crucible, furnace, heat and time. */
export interface MeltCheck {
  readonly crucible: MachineId | undefined;
  readonly furnace: MachineId | undefined;
  /** Working capacity of the crucible, litres. */
  readonly capacity: Figure | undefined;
  /** Share of it that is filled, percent. */
  readonly filled: Figure | undefined;
  /** Melts that all the metal would take; one mould is filled from one. */
  readonly melts: Figure | undefined;
  /** For each kilogram, from the shop's temperature to that of pouring. */
  readonly heatPerKg: Figure | undefined;
  readonly heat: Figure | undefined;
  /** What a cold crucible takes besides; a rate that was timed from cold has it in it already. */
  readonly crucibleHeat: Figure | undefined;
  /** Heat to the metal. */
  readonly rate: Figure | undefined;
  readonly minutes: Figure | undefined;
  readonly verdicts: readonly PourVerdict[];
  readonly unknown: readonly FoundryUnknown[];
}

/** @param temperature at which it is poured, as written or proposed */
export function meltCheck(
  input: PourInput,
  charge: ChargeCheck,
  alloy: PourAlloy | undefined,
  temperature: Figure | undefined,
  ambient: Figure,
): MeltCheck {
  const { pour, machines, lengthUnit } = input;
  const unknown: FoundryUnknown[] = [];
  const find = (id: MachineId | undefined): Machine | undefined => machines.find((one) => one.id === id);
  const [crucible, furnace] = [find(pour.crucible), find(pour.furnace)];
  if (!crucible) unknown.push({ is: 'field', field: 'crucible' });
  if (!furnace) unknown.push({ is: 'field', field: 'furnace' });
  const figureOf = (
    machine: Machine | undefined,
    key: string,
    unit: Figure['unit'],
    needed = true,
  ): Figure | undefined => {
    if (!machine) return undefined;
    const value = readFigures(machine, lengthUnit).values.get(key);
    if (value === undefined) {
      if (needed) unknown.push({ is: 'figure', machine: machine.id, key });
      return undefined;
    }
    const status = machine.generic ? 'starting value' : 'written';
    return { value, unit, origin: `${machine.name}${machine.generic ? ', a figure of its size class' : ''}`, status };
  };
  const capacity = figureOf(crucible, 'capacity', 'l');
  const melting = alloy?.thermal();
  const heatPerKg =
    melting && temperature
      ? {
          value: heatToPour(melting.thermal, ambient.value, temperature.value),
          unit: 'kJ/kg' as const,
          origin: 'heating, melting and superheating',
          status: weakest([...melting.from, temperature, ambient].map(({ status }) => status)),
        }
      : undefined;
  const heat = worked(
    'kJ',
    'heat of each kilogram by the charge',
    [heatPerKg, charge.charge],
    (perKg, kg) => perKg * kg,
  );
  const timed = timedRate(input);
  const rate = timed ?? figureOf(furnace, 'heatRate', 'kW', furnace !== undefined);
  const crucibleHeat = worked(
    'kJ',
    foundryPractice.crucibleHeat.source,
    [figureOf(crucible, 'emptyMass', 'kg', false), fromTable(foundryPractice.crucibleHeat, ''), temperature, ambient],
    (kg, perKgK, to, from) => kg * perKgK * (to - from),
  );
  return {
    crucible: crucible?.id,
    furnace: furnace?.id,
    capacity,
    filled: worked(
      '%',
      'liquid by the working capacity',
      [charge.liquid, capacity],
      (litres, full) => (100 * litres) / full,
    ),
    melts: worked('', 'liquid by the working capacity, rounded up', [charge.liquid, capacity], meltsFor),
    heatPerKg,
    heat,
    crucibleHeat,
    rate,
    minutes: worked('min', 'heat by the furnace’s rate to the metal', [heat, rate], minutesToHeat),
    verdicts: [
      capacityVerdict(input, charge, crucible, capacity),
      ...furnaceVerdicts(crucible, furnace, temperature, (machine, key, unit) => figureOf(machine, key, unit, false)),
    ],
    unknown,
  };
}

function capacityVerdict(
  { machines, lengthUnit, pour }: PourInput,
  { liquid, unknown }: ChargeCheck,
  crucible: Machine | undefined,
  capacity: Figure | undefined,
): PourVerdict {
  const about = { machine: crucible?.id };
  const judged = { about, has: capacity, needs: liquid };
  if (!liquid || !capacity) {
    const missing: FoundryUnknown[] = !crucible
      ? [{ is: 'field', field: 'crucible' }]
      : capacity
        ? []
        : [{ is: 'figure', machine: crucible.id, key: 'capacity' }];
    return verdict('crucible-capacity', 'unknown', { ...judged, unknown: [...missing, ...unknown] });
  }
  if (liquid.value <= capacity.value) {
    // What is still missed would come on top.
    return unknown.length === 0
      ? verdict('crucible-capacity', 'clear', judged)
      : verdict('crucible-capacity', 'unknown', { ...judged, unknown });
  }
  const others = machines
    .filter(({ type, id }) => type === 'crucible' && id !== pour.crucible)
    .map((machine) => ({ machine, litres: readFigures(machine, lengthUnit).values.get('capacity') ?? 0 }))
    .filter(({ litres }) => litres >= liquid.value)
    .sort((a, b) => a.litres - b.litres);
  const ways: Way[] = others.slice(0, 2).map(({ machine }) => ({ is: 'machine', machine: machine.id }));
  return verdict('crucible-capacity', 'stop', { ...judged, ways: [...ways, { is: 'capacity', litres: liquid.value }] });
}

function furnaceVerdicts(
  crucible: Machine | undefined,
  furnace: Machine | undefined,
  temperature: Figure | undefined,
  figureOf: (machine: Machine | undefined, key: string, unit: Figure['unit']) => Figure | undefined,
): readonly PourVerdict[] {
  const verdicts: PourVerdict[] = [];
  const highest = figureOf(furnace, 'highest', '°C');
  if (highest && temperature) {
    const state = highest.value >= temperature.value ? 'clear' : 'stop';
    const about = { machine: furnace?.id };
    verdicts.push(verdict('furnace-temperature', state, { about, has: highest, needs: temperature }));
  }
  for (const [room, size] of [
    ['bore', 'outside'],
    ['depth', 'height'],
  ] as const) {
    const [has, needs] = [figureOf(furnace, room, 'mm'), figureOf(crucible, size, 'mm')];
    if (!has || !needs) continue;
    const state = has.value >= needs.value ? 'clear' : 'stop';
    verdicts.push(verdict('crucible-in-furnace', state, { about: { machine: furnace?.id }, has, needs }));
  }
  return verdicts;
}

/** The middle one of the rates of all melts on the same furnace that were weighed and timed. */
function timedRate(input: PourInput): Figure | undefined {
  const { pour, pours, lengthUnit } = input;
  if (pour.furnace === undefined) return undefined;
  const rates = pours.flatMap((other) => {
    const { journal, temperature, ambient } = readPour(other, lengthUnit);
    const melting = pourAlloy({ ...input, pour: other }, [])?.thermal()?.thermal;
    const hot = journal?.temperature ?? temperature;
    if (other.furnace !== pour.furnace || !melting || !hot || !journal?.charged || !journal.meltMinutes) return [];
    const cold = journal.ambient ?? ambient ?? fromTable(foundryPractice.ambientC, '°C');
    return [rateOfMelt(journal.charged.value, heatToPour(melting, cold.value, hot.value), journal.meltMinutes.value)];
  });
  if (rates.length === 0) return undefined;
  rates.sort((a, b) => a - b);
  const value = (rates[(rates.length - 1) >> 1]! + rates[rates.length >> 1]!) / 2;
  return {
    value,
    unit: 'kW',
    origin: `${rates.length} ${rates.length === 1 ? 'melt that was' : 'melts that were'} weighed and timed on it`,
    status: 'written',
  };
}
