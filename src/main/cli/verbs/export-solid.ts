import { ok, type Result } from '../../../shared/base/result.ts';
import type { Part } from '../../../shared/build/part.ts';
import type { Build } from '../../../shared/build/records.ts';
import { createWorks } from '../../../shared/check/create-works.ts';
import { write3mf } from '../../../shared/solid/formats/three-mf/write-3mf.ts';
import { writeStl } from '../../../shared/solid/formats/write-stl.ts';
import { loadKernel } from '../../../shared/solid/manifold/load-kernel.ts';
import type { PartState } from '../../../shared/solid/placed.ts';
import { type CallProblem, problem } from '../verb.ts';

/** Forms in which a part's solid is written. */
export const writtenForms = ['stl', '3mf'] as const;
export type WrittenForm = (typeof writtenForms)[number];

export interface WrittenSolid {
  readonly bytes: Uint8Array;
  /** Names of bodies that are not in it, because they are not placed or have no sound shape. */
  readonly missing: readonly string[];
}

/** The solid of a part as a file, in mm. */
export async function solidFile(
  build: Build,
  part: Part,
  state: PartState,
  form: WrittenForm,
): Promise<Result<WrittenSolid, CallProblem>> {
  const kernel = await loadKernel();
  const works = createWorks(build, () => kernel);
  works.computeSolid(part.id);
  const { solids } = works;
  const bodies = solids.bodiesOf(part.id);
  if (bodies.length === 0) {
    return problem(part.name, 'The part has no bodies.', 'Draw its bodies first, or import its solid.');
  }
  const refused = new Set<string>(solids.refusedOf(part.id).map(({ body }) => body));
  const missing = bodies
    .filter(({ record, problem: trouble }) => trouble !== undefined || refused.has(record.id))
    .map(({ record }) => record.name);
  const mesh = solids.meshOf(part.id, state);
  if (mesh === undefined || mesh.triangles.length === 0) {
    return problem(
      part.name,
      `There is no solid to write: ${missing.length > 0 ? `its bodies are not placed (${missing.join(', ')})` : 'nothing is left of its bodies'}.`,
      'The verb part says what each of them lacks.',
    );
  }
  const title = state === 'as cast' ? `${part.name}, as cast` : part.name;
  // "solid" at the beginning would pass for the text form of STL.
  return ok({ bytes: form === 'stl' ? writeStl(mesh, `Waywright, mm: ${title}`) : write3mf(mesh, title), missing });
}
