import type { Machine } from '../../build/machine.ts';
import { readFigures } from '../../plan/machine-figures-read.ts';
import type { LengthUnit } from '../../quantity/kind.ts';
import type { MachineRange } from '../cutting/conditions.ts';

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

/** The keys of its slowest and fastest speed. */
const speedKeys: Readonly<Partial<Record<Machine['type'], readonly [slowest: string, fastest: string]>>> = {
  lathe: ['slowestRpm', 'fastestRpm'],
  'drill press': ['slowestRpm', 'fastestRpm'],
  'milling machine': ['slowestRpm', 'fastestRpm'],
  shaper: ['slowestStrokes', 'fastestStrokes'],
  bandsaw: ['slowestBand', 'fastestBand'],
};

export function meansOf(machine: Machine | undefined, lengthUnit: LengthUnit): MachineMeans {
  if (!machine) return nothing;
  const { values } = readFigures(machine, lengthUnit);
  const keys = speedKeys[machine.type];
  return {
    range: keys ? { slowest: values.get(keys[0]), fastest: values.get(keys[1]) } : nothing.range,
    motorKw: values.get('power'),
    wheelWidthMm: values.get('wheelWidth'),
  };
}
