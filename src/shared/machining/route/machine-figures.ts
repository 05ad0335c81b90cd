import type { Machine } from '../../build/machine.ts';
import type { LengthUnit } from '../../quantity/kind.ts';
import type { MachineRange } from '../cutting/conditions.ts';
import { type Rate, readRate } from '../read-rate.ts';
import { readPlain } from './read-operation.ts';

/** What a machine can do, as far as speeds, feeds and power hang on it. What is not known, or cannot be read, is undefined. */
export interface MachineMeans {
  /** Turns or double strokes per minute; of a bandsaw m/min. */
  readonly range: MachineRange;
  readonly motorKw: number | undefined;
  /** Of a grinding wheel. */
  readonly wheelWidthMm: number | undefined;
}

const nothing: MachineMeans = {
  range: { slowest: undefined, fastest: undefined },
  motorKw: undefined,
  wheelWidthMm: undefined,
};

/** The keys of its slowest and fastest speed, and how they are written. */
const speedKeys: Readonly<Partial<Record<Machine['type'], readonly [slowest: string, fastest: string, rate: Rate]>>> = {
  lathe: ['slowestRpm', 'fastestRpm', 'rpm'],
  'drill press': ['slowestRpm', 'fastestRpm', 'rpm'],
  'milling machine': ['slowestRpm', 'fastestRpm', 'rpm'],
  shaper: ['slowestStrokes', 'fastestStrokes', 'rpm'],
  bandsaw: ['slowestBand', 'fastestBand', 'speed'],
};

export function meansOf(machine: Machine | undefined, lengthUnit: LengthUnit): MachineMeans {
  if (!machine) return nothing;
  const { figures, type } = machine;
  const rate = (key: string, kind: Rate): number | undefined => {
    const read = readRate(figures[key] ?? '', kind);
    return read.ok ? read.value : undefined;
  };
  const keys = speedKeys[type];
  const wheel = readPlain(figures.wheelWidth ?? '', 'length', lengthUnit);
  return {
    range: keys ? { slowest: rate(keys[0], keys[2]), fastest: rate(keys[1], keys[2]) } : nothing.range,
    motorKw: rate('power', 'power'),
    wheelWidthMm: wheel.ok ? wheel.value : undefined,
  };
}
