import type { DimensionId } from '../../base/ids.ts';
import { readFigures } from '../../plan/machine-figures-read.ts';
import type { Unknown } from '../../plan/unknown.ts';
import { distinctUnknowns } from '../../plan/unknown.ts';
import type { MachineType } from '../../tables/machine-figures.ts';
import type { Remedy, SetupCheck, SweptProfile, Verdict } from '../setup-check.ts';
import { sweepPieces } from '../swept/sweep-pieces.ts';
import { type Judging, judge, judging } from '../verdicts/judge.ts';
import type { Question } from '../verdicts/question.ts';
import { questionsOf } from '../verdicts/questions.ts';
import { balanceOf, turns } from './balance.ts';
import { dimensionRemedies } from './dimension-remedies.ts';
import { formulaFollower } from './follow-formulas.ts';
import { type ResolvedWork, resolveWork } from './resolve-work.ts';
import { type Scene, sceneOf } from './scene.ts';
import type { SetupInput } from './setup-input.ts';
import { waysOut } from './ways-out.ts';

/** Machines that do not turn or move the work about a line. */
const withoutLine: readonly MachineType[] = ['vise', 'surface plate'];

/** Machines that work can be put into. */
const machinesForWork: readonly MachineType[] = [
  'lathe',
  'drill press',
  'milling machine',
  'shaper',
  'planer',
  'grinder',
  'bandsaw',
  'surface plate',
  'vise',
];

/** A check, and what else it hangs on than the parts that are held. */
export interface Checked {
  readonly check: SetupCheck;
  /** Dimensions that formulas of the parts' own hang on, looked at for a remedy. */
  readonly roots: readonly DimensionId[];
}

/** The work as it is put in, its swept profile worked out when first asked for. Depends on nothing of the machine. */
export interface SweptWork extends ResolvedWork {
  profile(): SweptProfile | undefined;
}

export function sweptWork(input: SetupInput): SweptWork {
  const work = resolveWork(input);
  let profile: SweptProfile | undefined;
  const { worlds } = work;
  const hasLine = input.setup.line.through !== undefined;
  return {
    ...work,
    profile() {
      if (worlds && hasLine) profile ??= sweepPieces(worlds.pieces, worlds.drawn.line);
      return profile;
    },
  };
}

/**
 * What the workshop says of a set-up: swept profile, verdicts with their bands and remedies, balance. Pure and without memory;
 * `create-setup-checks.ts` keeps what did not change.
 */
export function checkSetup(input: SetupInput, work: SweptWork = sweptWork(input)): Checked {
  const { setup, machines } = input;
  const machine = machines.find(({ id }) => id === setup.machine);
  const unknown: Unknown[] = [...work.unknown];
  if (!machine) unknown.push({ is: 'machine' });
  else if (!machinesForWork.includes(machine.type)) unknown.push({ is: 'field', field: 'machine' });
  if (!setup.line.through && !(machine && withoutLine.includes(machine.type))) unknown.unshift({ is: 'line' });
  const { worlds } = work;
  const nothing = { setup, profile: undefined, extent: undefined, balance: undefined, balanceUnknown: [] } as const;
  if (!worlds) return { check: { ...nothing, verdicts: [], unknown: distinctUnknowns(unknown) }, roots: [] };

  const extent = setup.line.through ? worlds.drawn.extentOf(worlds.adding) : undefined;
  const isJudged = machine && unknown.length === 0;
  const { verdicts, roots } = isJudged
    ? judgeScene(input, work, sceneOf(input, work, worlds, setup, machine))
    : { verdicts: [], roots: [] };
  const plate =
    setup.holding.as === 'face plate' && machine
      ? readFigures(machine, input.lengthUnit).values.get('facePlateDiameter')
      : undefined;
  const isTurned =
    turns(setup) && setup.line.through !== undefined && (machine === undefined || machine.type === 'lathe');
  const { balance, unknown: balanceUnknown } = isTurned
    ? balanceOf(input, worlds, work.reading, plate === undefined ? undefined : plate / 2)
    : { balance: undefined, unknown: [] };
  const profile = work.profile();
  return {
    check: { setup, profile, extent, verdicts, unknown: distinctUnknowns(unknown), balance, balanceUnknown },
    roots,
  };
}

function judgeScene(
  input: SetupInput,
  work: ResolvedWork,
  scene: Scene,
): { readonly verdicts: readonly Verdict[]; readonly roots: readonly DimensionId[] } {
  const on = judging(scene.worlds);
  const judged = questionsOf(scene).flatMap((question) => {
    const verdict = judge(question, on);
    return verdict ? [{ question, verdict }] : [];
  });
  const verdicts = judged.map(({ verdict }) => verdict);
  if (!verdicts.some(isWanting)) return { verdicts, roots: [] };
  const ways = waysOut(input, work, scene, on, verdicts);
  const follower = formulaFollower(input.numbers, input.lengthUnit);
  const roots = new Set<DimensionId>();
  const mended = judged.map(({ question, verdict }) => {
    if (!isWanting(verdict)) return verdict;
    for (const { dimension } of verdict.shares) for (const root of follower.rootsOf(dimension)) roots.add(root);
    return { ...verdict, remedies: remediesOf(question, verdict, on, follower, input, ways) };
  });
  return { verdicts: mended, roots: [...roots] };
}

const isWanting = ({ state }: Verdict): boolean => state === 'hits' || state === 'at the limit';

function remediesOf(
  question: Question,
  verdict: Verdict,
  on: Judging,
  follower: ReturnType<typeof formulaFollower>,
  { lengthUnit }: SetupInput,
  ways: readonly Remedy[],
): readonly Remedy[] {
  return [...dimensionRemedies(question, verdict, on, follower, lengthUnit), ...ways];
}
