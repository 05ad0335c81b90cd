import type { IdSource } from '../base/ids.ts';
import type { Result } from '../base/result.ts';
import type { BuildDiff } from './diff.ts';
import type { Build } from './records.ts';
import type { Refusal } from './refusals.ts';

/** What a command may use besides the build and its parameters; the engine has no clock and no dice of its own. */
export interface CommandContext {
  readonly newId: IdSource;
  /** The present moment, ISO 8601, UTC. */
  readonly now: string;
}

export interface Step {
  readonly diff: BuildDiff;
  /** Completes "Undo …": what was done, with the names of that moment, e.g. "set bore of column to 25". */
  readonly label: string;
}

/** One kind of edit: a pure function from build and parameters to a diff, or a refusal. Undo needs no code of its own. */
export interface Command<P> {
  /** Same as the file name, e.g. `dimension-set`. */
  readonly id: string;
  run(build: Build, params: P, context: CommandContext): Result<Step, Refusal>;
}

export function defineCommand<P>(command: Command<P>): Command<P> {
  return command;
}
