import type { Machine } from '../../build/machine.ts';
import type { Operation } from '../../build/operation.ts';
import type { Setup } from '../../build/setup.ts';
import type { Reading } from '../../plan/amounts.ts';
import { type MachineFiguresRead, readFigures } from '../../plan/machine-figures-read.ts';
import type { LengthUnit } from '../../quantity/kind.ts';
import type { PlacedBody } from '../../solid/placed.ts';
import type { MachineType } from '../../tables/machine-figures.ts';
import { type Cut, type KnownCut, readCut } from './cuts.ts';
import type { ResolvedWork } from './resolve-work.ts';
import type { SetupInput } from './setup-input.ts';
import type { Worlds } from './world.ts';

/** A set-up on a machine, with all that is needed to judge it. */
export interface Scene {
  readonly setup: Setup;
  readonly machine: Machine;
  readonly type: MachineType;
  readonly figures: MachineFiguresRead;
  readonly reading: Reading;
  readonly lengthUnit: LengthUnit;
  readonly worlds: Worlds;
  /** Of the operations of the part that are done in this set-up, in list order; those whose cut is not known too. */
  readonly cuts: readonly KnownCut[];
  /** Other machines of the shop: the vise on a table is one of them. */
  readonly machines: readonly Machine[];
  readonly allowanceMm: number;
  /** Of the part that is worked upon, those that are still to be made among them. */
  readonly bodies: readonly PlacedBody[];
}

/** Operations of the set-up's own part that are done in it, in list order. */
const operationsIn = ({ setup, partOf }: SetupInput): readonly Operation[] =>
  (partOf(setup.part)?.operations ?? []).filter((operation) => operation.setup === setup.id);

export function sceneOf(
  input: SetupInput,
  { reading, allowanceMm }: ResolvedWork,
  worlds: Worlds,
  setup: Setup,
  machine: Machine,
): Scene {
  return {
    setup,
    machine,
    type: machine.type,
    figures: readFigures(machine, input.lengthUnit),
    reading,
    lengthUnit: input.lengthUnit,
    worlds,
    cuts: operationsIn(input).map((operation) => readCut(operation, reading)),
    machines: input.machines,
    allowanceMm,
    bodies: input.partOf(setup.part)?.bodies ?? [],
  };
}

export const knownCuts = ({ cuts }: Scene): readonly Cut[] => cuts.flatMap((cut) => (cut.ok ? [cut.value] : []));
