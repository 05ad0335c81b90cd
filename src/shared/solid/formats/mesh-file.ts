import type { CodedMesh } from '../../build/mesh-code.ts';
import type { MeshUnit } from '../../build/solid.ts';

/** The triangles of a file in the file's own numbers, before anything is mended. */
export interface FileMesh {
  readonly mesh: CodedMesh;
  /** The unit that the file itself names; undefined where its form has no word for one. */
  readonly unit: MeshUnit | undefined;
  /** What was passed over, in sentences. */
  readonly remarks: readonly string[];
}

/** Why a file gives no solid. `code` is stable, the rest is for the reader. */
export interface SolidProblem {
  readonly code:
    | 'unknown-form'
    | 'empty'
    | 'broken-off'
    | 'unreadable'
    | 'too-large'
    | 'not-supported'
    | 'open'
    | 'one-sided'
    | 'many-shells'
    | 'no-volume'
    | 'took-too-long';
  /** Where in the file or on the solid, such as `line 12`, `triangle 3`; empty for the file as a whole. */
  readonly place: string;
  readonly sentence: string;
  readonly remedy: string;
}

export const refuse = (
  code: SolidProblem['code'],
  place: string,
  sentence: string,
  remedy: string,
): { readonly ok: false; readonly error: SolidProblem } => ({ ok: false, error: { code, place, sentence, remedy } });

/** A triangle more costs 24 bytes or so in every copy of the build; real parts of a home foundry stay far below. */
export const MOST_TRIANGLES = 1_000_000;

/** Largest file that is read at all. Text of a million triangles takes about 250 MB; a STEP file seldom 50. */
export const LARGEST_FILE_BYTES = 256 * 1024 * 1024;

export const tooManyTriangles = (count: number) =>
  refuse(
    'too-large',
    '',
    `The solid has ${count} triangles or more, and up to ${MOST_TRIANGLES} are taken.`,
    'Write it again from the program that it came from, with a coarser setting.',
  );

/** Gathers vertices and triangles of a size that is not known beforehand. */
export interface MeshGatherer {
  readonly vertices: number[];
  readonly triangles: number[];
}

export const gathered = ({ vertices, triangles }: MeshGatherer): CodedMesh => ({
  vertices: Float64Array.from(vertices),
  triangles: Uint32Array.from(triangles),
});
