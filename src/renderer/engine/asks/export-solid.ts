import type { PartId } from '../../../shared/base/ids.ts';
import { err, ok, type Result } from '../../../shared/base/result.ts';
import { write3mf } from '../../../shared/solid/formats/three-mf/write-3mf.ts';
import { writeStl } from '../../../shared/solid/formats/write-stl.ts';
import type { Ask } from '../view.ts';

export interface SolidFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Bodies that are not in it, because they are not placed. */
  readonly missing: readonly string[];
}

/** The finished solid of a part as a file in mm, or a sentence saying why there is none. */
export const exportSolidAsk: Ask<
  { readonly part: PartId | undefined; readonly kind: 'stl' | '3mf' },
  Result<SolidFile, string>
> = async ({ index, solids, measuring }, { part, kind }) => {
  const found = part === undefined ? undefined : index.part(part);
  if (found === undefined) return err('No part is chosen. Choose the part whose solid is wanted.');
  const bodies = solids.bodiesOf(found.id);
  if (bodies.length === 0) return err(`${found.name} has no bodies. Draw its bodies first, or import its solid.`);
  const mesh = solids.solidOf(found.id) && (await measuring.meshOf(found.id, 'finished'));
  if (mesh === undefined || mesh.triangles.length === 0) {
    return err(`${found.name} has no solid yet. Place its bodies, and wait until the solid is shown.`);
  }
  const refused = new Set<string>(solids.refusedOf(found.id).map(({ body }) => body));
  const missing = bodies
    .filter(({ record, problem }) => problem !== undefined || refused.has(record.id))
    .map(({ record }) => record.name);
  const bytes = kind === 'stl' ? writeStl(mesh, `Waywright, mm: ${found.name}`) : write3mf(mesh, found.name);
  return ok({ name: found.name, bytes, missing });
};
