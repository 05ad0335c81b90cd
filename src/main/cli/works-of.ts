import { buildOf } from '../../shared/build/look-up.ts';
import type { BuildRecord } from '../../shared/build/records.ts';
import { createWorks } from '../../shared/check/create-works.ts';
import type { Works } from '../../shared/check/works.ts';
import { loadKernel } from '../../shared/solid/manifold/load-kernel.ts';

/** The engine over a build with all its solids worked out. The kernel is loaded only for a build that has bodies. */
export async function worksOf(records: readonly BuildRecord[]): Promise<Works> {
  const kernel = records.some(({ kind }) => kind === 'body') ? await loadKernel() : undefined;
  const works = createWorks(buildOf(records), () => kernel);
  for (const part of works.solids.pending()) works.computeSolid(part);
  return works;
}
