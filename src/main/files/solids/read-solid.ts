import { unreachable } from '../../../shared/base/assert.ts';
import { ok, type Result } from '../../../shared/base/result.ts';
import { mendMesh, type SoundMesh } from '../../../shared/solid/formats/mend-mesh.ts';
import {
  type FileMesh,
  LARGEST_FILE_BYTES,
  refuse,
  type SolidProblem,
} from '../../../shared/solid/formats/mesh-file.ts';
import { readObj } from '../../../shared/solid/formats/read-obj.ts';
import { readStl } from '../../../shared/solid/formats/read-stl.ts';
import { type SolidForm, solidForm } from '../../../shared/solid/formats/solid-form.ts';
import { read3mf } from '../../../shared/solid/formats/three-mf/read-3mf.ts';
import { loadKernel } from '../../../shared/solid/manifold/load-kernel.ts';
import type { Vec3 } from '../../../shared/solid/placed.ts';
import { readStep } from './read-step.ts';
import { uniteBodies } from './unite-bodies.ts';

/** A closed solid out of a file, its numbers as the file has them. */
export interface FileSolid extends SoundMesh {
  readonly form: SolidForm;
  /** The unit that the file names; undefined where the reader must be asked. */
  readonly unit: FileMesh['unit'];
}

export const tooLargeFile = (bytes: number) =>
  refuse(
    'too-large',
    '',
    `The file has ${Math.ceil(bytes / 1024 / 1024)} MB, and up to ${LARGEST_FILE_BYTES / 1024 / 1024} MB are read.`,
    'Write it again from the program that it came from, with a coarser setting.',
  );

/**
 * Reads a file of a solid, whichever form it has, and mends it. Long work in one go: see `read-solid-apart.ts`.
 * @param fileName its ending decides where the bytes leave the form open
 */
export async function readSolid(fileName: string, bytes: Uint8Array): Promise<Result<FileSolid, SolidProblem>> {
  if (bytes.length > LARGEST_FILE_BYTES) return tooLargeFile(bytes.length);
  const form = solidForm(fileName, bytes);
  if (form === undefined) {
    return refuse(
      'unknown-form',
      '',
      'This is none of the forms of solids that are read.',
      'Choose a STEP, STL, OBJ or 3MF file.',
    );
  }
  const read = await readForm(form, bytes);
  if (!read.ok) return read;
  const { mesh, unit, remarks } = read.value;
  const figure = (value: number): string => String(Number(value.toPrecision(6)));
  const written = ([x, y, z]: Vec3): string => `x ${figure(x)}, y ${figure(y)}, z ${figure(z)} in the file's numbers`;
  const sound = mendMesh(mesh, written);
  if (!sound.ok) return sound;
  const united = sound.value.shells > 1 ? await uniteBodies(sound.value.mesh, () => loadKernel()) : undefined;
  const one = united && mendMesh(united, written);
  if (!one?.ok) return ok({ ...sound.value, form, unit, remarks: [...remarks, ...sound.value.remarks] });
  const told = 'Bodies that reach into each other were made one.';
  return ok({ ...one.value, form, unit, remarks: [...remarks, ...sound.value.remarks, told] });
}

async function readForm(form: SolidForm, bytes: Uint8Array): Promise<Result<FileMesh, SolidProblem>> {
  switch (form) {
    case 'step':
      return readStep(bytes);
    case 'stl':
      return readStl(bytes);
    case 'obj':
      return readObj(bytes);
    case '3mf':
      return read3mf(bytes);
    default:
      return unreachable(form);
  }
}
