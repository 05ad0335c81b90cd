import type { PartId } from '../../../shared/base/ids.ts';
import type { Works } from '../../../shared/check/works.ts';
import { createSolids } from '../../../shared/solid/create-solids.ts';
import { createPlacing } from '../../../shared/solid/place-bodies.ts';
import type { Solids } from '../../../shared/solid/solids.ts';
import type { BuildIndex } from '../build-index.ts';
import type { KernelLoader } from './kernel-loader.ts';

/** The solids of the build that is open. */
export function sceneSolids(works: Works, index: BuildIndex, loader: KernelLoader): Solids {
  const placing = createPlacing();
  const bodiesOf = (part: PartId) =>
    placing.placeBodies(part, { bodies: index.bodiesOf(part), get: (id) => works.build.get(id) }, works.drawing);
  return createSolids({ parts: () => index.parts().map(({ id }) => id), bodiesOf }, () => loader.kernel);
}
