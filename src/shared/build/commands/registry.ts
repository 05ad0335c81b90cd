import type { Result } from '../../base/result.ts';
import type { Command, CommandContext, Step } from '../command.ts';
import type { Build } from '../records.ts';
import type { Refusal } from '../refusals.ts';
import acceptanceWithdraw from './acceptance-withdraw.ts';
import alloyAdd from './alloy-add.ts';
import alloyRemove from './alloy-remove.ts';
import alloySet from './alloy-set.ts';
import bodyAdd from './body-add.ts';
import bodyMove from './body-move.ts';
import bodyRemove from './body-remove.ts';
import bodySet from './body-set.ts';
import bodySketch from './body-sketch.ts';
import buildReplace from './build-replace.ts';
import castingSet from './casting-set.ts';
import cellsSet from './cells-set.ts';
import datumSet from './datum-set.ts';
import dimensionAdd from './dimension-add.ts';
import dimensionMove from './dimension-move.ts';
import dimensionRemove from './dimension-remove.ts';
import dimensionSet from './dimension-set.ts';
import dimensionsImport from './dimensions-import.ts';
import findingAccept from './finding-accept.ts';
import journalSet from './journal-set.ts';
import machineAdd from './machine-add.ts';
import machineMove from './machine-move.ts';
import machineRemove from './machine-remove.ts';
import machineSet from './machine-set.ts';
import machinesTake from './machines-take.ts';
import materialAdd from './material-add.ts';
import materialRemove from './material-remove.ts';
import materialSet from './material-set.ts';
import operationAdd from './operation-add.ts';
import operationMove from './operation-move.ts';
import operationRemove from './operation-remove.ts';
import operationSet from './operation-set.ts';
import operationsOrder from './operations-order.ts';
import partAdd from './part-add.ts';
import partMove from './part-move.ts';
import partRemove from './part-remove.ts';
import partSet from './part-set.ts';
import patternAdd from './pattern-add.ts';
import patternMove from './pattern-move.ts';
import patternRemove from './pattern-remove.ts';
import patternSet from './pattern-set.ts';
import pourAdd from './pour-add.ts';
import pourCopy from './pour-copy.ts';
import pourMove from './pour-move.ts';
import pourRemove from './pour-remove.ts';
import pourSet from './pour-set.ts';
import settingsSet from './settings-set.ts';
import setupAdd from './setup-add.ts';
import setupCopy from './setup-copy.ts';
import setupMove from './setup-move.ts';
import setupRemove from './setup-remove.ts';
import setupSet from './setup-set.ts';
import solidImport from './solid-import.ts';
import stationAdd from './station-add.ts';
import stationMove from './station-move.ts';
import stationRemove from './station-remove.ts';
import stationSet from './station-set.ts';
import weighingAdd from './weighing-add.ts';
import weighingRemove from './weighing-remove.ts';

/**
 * Every edit there is, by id. Listed rather than globbed, because the parameters of each keep their type this way; a test
 * sees that the list and the folder agree.
 */
export const commands = {
  'acceptance-withdraw': acceptanceWithdraw,
  'alloy-add': alloyAdd,
  'alloy-remove': alloyRemove,
  'alloy-set': alloySet,
  'body-add': bodyAdd,
  'body-move': bodyMove,
  'body-remove': bodyRemove,
  'body-set': bodySet,
  'body-sketch': bodySketch,
  'build-replace': buildReplace,
  'casting-set': castingSet,
  'cells-set': cellsSet,
  'datum-set': datumSet,
  'dimension-add': dimensionAdd,
  'dimension-move': dimensionMove,
  'dimension-remove': dimensionRemove,
  'dimension-set': dimensionSet,
  'dimensions-import': dimensionsImport,
  'finding-accept': findingAccept,
  'journal-set': journalSet,
  'machine-add': machineAdd,
  'machine-move': machineMove,
  'machine-remove': machineRemove,
  'machine-set': machineSet,
  'machines-take': machinesTake,
  'material-add': materialAdd,
  'material-remove': materialRemove,
  'material-set': materialSet,
  'operation-add': operationAdd,
  'operation-move': operationMove,
  'operation-remove': operationRemove,
  'operation-set': operationSet,
  'operations-order': operationsOrder,
  'part-add': partAdd,
  'part-move': partMove,
  'part-remove': partRemove,
  'part-set': partSet,
  'pattern-add': patternAdd,
  'pattern-move': patternMove,
  'pattern-remove': patternRemove,
  'pattern-set': patternSet,
  'pour-add': pourAdd,
  'pour-copy': pourCopy,
  'pour-move': pourMove,
  'pour-remove': pourRemove,
  'pour-set': pourSet,
  'settings-set': settingsSet,
  'setup-add': setupAdd,
  'setup-copy': setupCopy,
  'setup-move': setupMove,
  'setup-remove': setupRemove,
  'setup-set': setupSet,
  'solid-import': solidImport,
  'station-add': stationAdd,
  'station-move': stationMove,
  'station-remove': stationRemove,
  'station-set': stationSet,
  'weighing-add': weighingAdd,
  'weighing-remove': weighingRemove,
} as const;

export type CommandId = keyof typeof commands;
export type ParamsOf<I extends CommandId> = (typeof commands)[I] extends Command<infer P> ? P : never;

/** A command with its parameters, as it travels from the screen to the engine. */
export type Order = { readonly [I in CommandId]: { readonly id: I; readonly params: ParamsOf<I> } }[CommandId];

/**
 * Carries out one edit upon a build that itself stays as it is.
 * @returns the step (its diff may be empty: then everything already was as asked), or the refusal.
 */
export function runCommand<I extends CommandId>(
  build: Build,
  id: I,
  params: ParamsOf<I>,
  context: CommandContext,
): Result<Step, Refusal> {
  return (commands[id] as unknown as Command<ParamsOf<I>>).run(build, params, context);
}
