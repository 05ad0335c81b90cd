import type { BuildDiff } from '../../shared/build/diff.ts';
import type { Works, WorksChange } from '../../shared/check/works.ts';
import type { Solids } from '../../shared/solid/solids.ts';
import type { BuildIndex } from './build-index.ts';
import type { Measuring } from './measuring/measuring.ts';
import type { KernelState } from './solid/kernel-loader.ts';

/** What a view sees: the engine over the open build, and its records by part. */
export interface Scene {
  readonly works: Works;
  readonly index: BuildIndex;
  readonly solids: Solids;
  /** Where solids are measured and sheets drawn. */
  readonly measuring: Measuring;
  readonly kernel: KernelState;
}

/** What the latest edit changed; undefined the first time a view is worked out. */
export interface SceneChange extends WorksChange {
  readonly diff: BuildDiff;
}

/**
 * A model that the window watches, worked out in the worker. Plain data only: it crosses as a patch. Whatever did not
 * change should keep its identity; then nothing is compared and nothing is sent.
 */
export interface View<P, M> {
  /** It takes its time: it is worked out when the answer to an edit is on its way, and once for several edits. */
  readonly late?: true;
  /** It shows the solid of the part in its parameters, which is therefore worked out before others. */
  readonly ofSolid?: true;
  /** Called once for each watched set of parameters, whose key it is; the closure may keep what it needs for the next time. */
  open(key: string): (scene: Scene, params: P, change: SceneChange | undefined) => M;
}

export const defineView = <P, M>(view: View<P, M>): View<P, M> => view;

/** A question answered once, without being watched. */
export type Ask<P, A> = (scene: Scene, params: P) => A | Promise<A>;
