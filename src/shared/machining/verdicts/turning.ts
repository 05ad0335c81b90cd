import type { Cut, CutWay, KnownCut } from '../setups/cuts.ts';
import type { Scene } from '../setups/scene.ts';

/** Whether the work turns about the line on a lathe. */
export const isTurning = ({ type, setup }: Pick<Scene, 'type' | 'setup'>): boolean =>
  type === 'lathe' && setup.holding.as !== 'vise' && setup.holding.as !== 'clamped to the table';

/**
 * How a lathe makes a cut: by a tool on the saddle from without or within, or by one in the tailstock. Undefined for what is done
 * by hand, or by a cutter that turns.
 */
export function latheWay({ way, operation }: Pick<Cut, 'way' | 'operation'>): Exclude<CutWay, 'flat'> | undefined {
  if (way !== 'flat') return way;
  return operation.process === 'grind' ? 'outside' : undefined;
}

/** An operation whose cut is not known: it is told once, by the verdict that would come first. */
export const unknownCuts = ({ cuts }: Pick<Scene, 'cuts'>): readonly Extract<KnownCut, { ok: false }>[] =>
  cuts.flatMap((cut) => (cut.ok ? [] : [cut]));
