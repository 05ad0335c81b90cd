import { ok, type Result } from '../../base/result.ts';
import {
  type FileMesh,
  gathered,
  type MeshGatherer,
  MOST_TRIANGLES,
  refuse,
  type SolidProblem,
  tooManyTriangles,
} from './mesh-file.ts';
import { readNumber, scanWords } from './scan-words.ts';

const HEAD_BYTES = 84;
const TRIANGLE_BYTES = 50;
/** Normal, three corners and two bytes of no meaning: the corners begin behind the normal. */
const CORNERS_AT = 12;

/** Whether the bytes begin as an STL text does. Binary files may too: their head is free, and some write "solid" there. */
export const beginsAsText = (bytes: Uint8Array): boolean => {
  const { next } = scanWords(bytes.subarray(0, 200));
  return next()?.toLowerCase() === 'solid';
};

const countOf = (bytes: Uint8Array): number =>
  bytes.length < HEAD_BYTES
    ? 0
    : new DataView(bytes.buffer, bytes.byteOffset, bytes.length).getUint32(HEAD_BYTES - 4, true);

/** Whether the length of the file is exactly that of the binary form with the number of triangles it names. */
export const isExactBinaryStl = (bytes: Uint8Array): boolean =>
  bytes.length >= HEAD_BYTES && bytes.length === HEAD_BYTES + TRIANGLE_BYTES * countOf(bytes);

/**
 * Reads STL, text or binary, told apart by the length: the first word cannot be trusted. The form names no unit. Normals
 * are left aside, as the order of the corners says the same. Corners come out as they stand, one vertex to each.
 */
export function readStl(bytes: Uint8Array): Result<FileMesh, SolidProblem> {
  if (isExactBinaryStl(bytes)) return readBinary(bytes, []);
  if (beginsAsText(bytes)) return readText(bytes);
  const count = countOf(bytes);
  const extra = bytes.length - HEAD_BYTES - TRIANGLE_BYTES * count;
  if (count > 0 && extra > 0) return readBinary(bytes, [`${extra} bytes behind the last triangle were passed over.`]);
  const whole = Math.max(0, Math.floor((bytes.length - HEAD_BYTES) / TRIANGLE_BYTES));
  return refuse(
    'broken-off',
    `byte ${bytes.length}`,
    `The file ends after ${whole} of the ${count} triangles that it promises.`,
    'Copy or write the file again; a part of it is missing.',
  );
}

function readBinary(bytes: Uint8Array, remarks: readonly string[]): Result<FileMesh, SolidProblem> {
  const count = countOf(bytes);
  if (count === 0) return nothingInIt();
  if (count > MOST_TRIANGLES) return tooManyTriangles(count);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const vertices = new Float64Array(count * 9);
  for (let triangle = 0; triangle < count; triangle++) {
    const from = HEAD_BYTES + triangle * TRIANGLE_BYTES + CORNERS_AT;
    for (let i = 0; i < 9; i++) {
      const value = view.getFloat32(from + i * 4, true);
      if (!Number.isFinite(value)) return noPlace(`triangle ${triangle + 1}`);
      vertices[triangle * 9 + i] = value;
    }
  }
  const triangles = Uint32Array.from({ length: count * 3 }, (_, i) => i);
  return ok({ mesh: { vertices, triangles }, unit: undefined, remarks });
}

function readText(bytes: Uint8Array): Result<FileMesh, SolidProblem> {
  const words = scanWords(bytes);
  const gatherer: MeshGatherer = { vertices: [], triangles: [] };
  const { vertices, triangles } = gatherer;
  let corners = 0;
  let ended = true;
  for (let word = words.next(); word !== undefined; word = words.next()) {
    switch (word.toLowerCase()) {
      case 'solid':
        ended = false;
        words.nextLine();
        break;
      case 'endsolid':
        ended = true;
        words.nextLine();
        break;
      case 'facet':
        // The normal may be anything, even "nan": writers put it there for a triangle without a size.
        words.nextLine();
        break;
      case 'outer':
        corners = 0;
        words.nextLine();
        break;
      case 'vertex': {
        for (let i = 0; i < 3; i++) {
          const given = words.nextOfLine();
          const value = readNumber(given);
          if (value === undefined) return noPlace(`line ${words.line()}`, given);
          vertices.push(value);
        }
        corners++;
        break;
      }
      case 'endloop': {
        if (corners !== 3) {
          return refuse(
            'unreadable',
            `line ${words.line()}`,
            `A face has ${corners} corners; in this form every face is a triangle.`,
            'Write the file again from the program that it came from.',
          );
        }
        const first = vertices.length / 3 - 3;
        triangles.push(first, first + 1, first + 2);
        if (triangles.length > MOST_TRIANGLES * 3) return tooManyTriangles(triangles.length / 3);
        break;
      }
      case 'endfacet':
        break;
      default:
        return refuse(
          'unreadable',
          `line ${words.line()}`,
          `"${word}" has no meaning in an STL text.`,
          'Write the file again from the program that it came from.',
        );
    }
  }
  if (triangles.length === 0) return nothingInIt();
  const remarks = ended ? [] : ['The last line, "endsolid", is missing: the file may have been cut short.'];
  return ok({ mesh: gathered(gatherer), unit: undefined, remarks });
}

const nothingInIt = () =>
  refuse('empty', '', 'The file holds no triangles.', 'Choose another file, or write it again with its solid shown.');

const noPlace = (place: string, given?: string) =>
  refuse(
    'unreadable',
    place,
    given === undefined ? 'A corner lies at no finite place.' : `"${given}" is no place of a corner.`,
    'Write the file again from the program that it came from, with points as decimal marks.',
  );
