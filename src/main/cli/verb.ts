import type { ParseArgsConfig } from 'node:util';
import type { Result } from '../../shared/base/result.ts';

/** Why a call ends without having done its work: exit status 2, one message on stderr. */
export interface CallProblem {
  /** File, or part of the call, that is at fault; empty for the call as a whole. */
  readonly place: string;
  readonly sentence: string;
  readonly remedy: string;
}

export const problem = (place: string, sentence: string, remedy: string): { ok: false; error: CallProblem } => ({
  ok: false,
  error: { place, sentence, remedy },
});

/** What a verb did: its words for stdout, and 0 (nothing stops) or 1 (something stops). */
export interface Outcome {
  readonly text: string;
  readonly status: 0 | 1;
  /** Words for stderr beside it, such as what was ignored. */
  readonly remarks?: readonly string[];
}

/** What a verb may use of the world; tests and `main.ts` hand it in. */
export interface Surroundings {
  readStdin(): Promise<string>;
  /** Whether to colour the words: only for eyes, never for a file or a pipe. */
  readonly colour: boolean;
  /** Uniform unsigned 32-bit integers for new ids. */
  random32(): number;
  /** The present moment, ISO 8601, UTC. */
  now(): string;
}

export interface ReadCall {
  readonly values: Readonly<Record<string, string | boolean | undefined>>;
  readonly files: readonly string[];
}

/** One verb of the command line. */
export interface Verb {
  readonly name: string;
  /** What stands behind the verb, e.g. `FILE PART`. */
  readonly usage: string;
  /** One line of the general help. */
  readonly summary: string;
  /** The help of the verb, beneath its usage. */
  readonly help: string;
  readonly options: NonNullable<ParseArgsConfig['options']>;
  /** Fewest and most words that are not options. */
  readonly words: readonly [fewest: number, most: number];
  run(call: ReadCall, surroundings: Surroundings): Promise<Result<Outcome, CallProblem>>;
}
