import { parseArgs } from 'node:util';
import { ok, type Result } from '../../shared/base/result.ts';
import { nearestName } from '../../shared/formula/nearest-name.ts';
import { type CallProblem, type Outcome, problem, type ReadCall, type Surroundings, type Verb } from './verb.ts';
import { chain } from './verbs/chain.ts';
import { check } from './verbs/check.ts';
import { exportVerb } from './verbs/export.ts';
import { hole } from './verbs/hole.ts';
import { importVerb } from './verbs/import.ts';
import { part } from './verbs/part.ts';
import { setup } from './verbs/setup.ts';
import { speed } from './verbs/speed.ts';
import { thread } from './verbs/thread.ts';

const verbs: readonly Verb[] = [check, part, chain, setup, importVerb, exportVerb, thread, hole, speed];

const NAME = 'waywright';

function generalHelp(): string {
  const width = Math.max(...verbs.map(({ name }) => name.length));
  const lines = verbs.map(({ name, summary }) => `  ${name.padEnd(width)}  ${summary}`);
  return `${NAME} VERB …   plan, check and build whole machines from your own castings

${lines.join('\n')}
  ${'help'.padEnd(width)}  this, or with a verb behind it, how to use that verb

FILE is a build file (.wayw), its JSON form, or - for JSON on standard input.
Exit status: 0 nothing stops, 1 something stops, 2 the call or a file is wrong.
`;
}

const verbHelp = (verb: Verb): string => `${NAME} ${verb.name} ${verb.usage}\n\n${verb.help}\n`;

/** Carries out one call of the command line. */
export async function call(args: readonly string[], surroundings: Surroundings): Promise<Result<Outcome, CallProblem>> {
  const [first, ...rest] = args;
  if (first === undefined) return problem('', 'No verb is given.', `Try: ${NAME} help`);
  if (first === '--help' || first === '-h') return ok({ text: generalHelp(), status: 0 });
  const isHelp = first === 'help';
  const name = isHelp ? rest[0] : first;
  if (name === undefined) return ok({ text: generalHelp(), status: 0 });
  const verb = verbs.find((known) => known.name === name);
  if (!verb) {
    const nearest = nearestName(
      name,
      verbs.map((known) => known.name),
    );
    const hint = nearest === undefined ? `Try: ${NAME} help` : `Did you mean ${nearest}? Otherwise try: ${NAME} help`;
    return problem(name, 'There is no such verb.', hint);
  }
  if (isHelp) return ok({ text: verbHelp(verb), status: 0 });
  const read = readCall(verb, rest);
  if (!read.ok) return read;
  return read.value.values.help ? ok({ text: verbHelp(verb), status: 0 }) : verb.run(read.value, surroundings);
}

function readCall(verb: Verb, args: readonly string[]): Result<ReadCall, CallProblem> {
  const usage = `Use: ${NAME} ${verb.name} ${verb.usage}`;
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { ...verb.options, help: { type: 'boolean', short: 'h' } },
      allowPositionals: true,
      strict: true,
    });
    const call: ReadCall = { values: values as ReadCall['values'], files: positionals };
    if (values.help) return ok(call);
    const [fewest, most] = verb.words;
    if (positionals.length < fewest) return problem(verb.name, 'Something is missing from the call.', usage);
    if (positionals.length > most) return problem(positionals[most] ?? '', 'This is one word too many.', usage);
    return ok(call);
  } catch (error) {
    // The reader of options says in plain words which one it does not know.
    const words = error instanceof Error ? (error.message.split(/[.\n]/)[0] ?? '') : String(error);
    return problem(verb.name, `${words}.`, usage);
  }
}
