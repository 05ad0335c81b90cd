import { ok, type Result } from '../../base/result.ts';
import { cutPolygon } from './cut-polygon.ts';
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

/** Smooth surfaces: their triangles would have to be worked out from control points. */
const SMOOTH = new Set(['surf', 'curv', 'curv2', 'cstype']);
const MOST_CORNERS = 10_000;

/**
 * Reads the faces of an OBJ text: `v` and `f` lines, with counts from the end (negative numbers), faces of any number of
 * corners, and lines joined by `\`. Objects and groups are taken together; colours, textures and normals are left aside.
 * The form names no unit.
 */
export function readObj(bytes: Uint8Array): Result<FileMesh, SolidProblem> {
  const words = scanWords(bytes);
  const gatherer: MeshGatherer = { vertices: [], triangles: [] };
  const { vertices, triangles } = gatherer;
  let smooth = false;
  do {
    const key = words.nextOfLine();
    if (key === undefined) continue;
    if (key === 'v') {
      for (let i = 0; i < 3; i++) {
        const given = words.nextOfLine();
        const value = readNumber(given);
        if (value === undefined) return fault(words.line(), `"${given ?? ''}" is no place of a vertex.`);
        vertices.push(value);
      }
    } else if (key === 'f') {
      const corners: number[] = [];
      for (let word = words.nextOfLine(); word !== undefined && !word.startsWith('#'); word = words.nextOfLine()) {
        const count = vertices.length / 3;
        const number = /^-?\d+$/.test(word.split('/', 1)[0]!) ? Number.parseInt(word, 10) : Number.NaN;
        const corner = number < 0 ? count + number : number - 1;
        if (!(corner >= 0 && corner < count)) {
          return fault(words.line(), `"${word}" is no vertex of the ${count} given so far.`);
        }
        corners.push(corner);
        if (corners.length > MOST_CORNERS) return fault(words.line(), `A face has more than ${MOST_CORNERS} corners.`);
      }
      if (corners.length < 3) return fault(words.line(), `A face has ${corners.length} corners, and needs three.`);
      for (const corner of cutPolygon(vertices, corners)) triangles.push(corner);
      if (triangles.length > MOST_TRIANGLES * 3) return tooManyTriangles(triangles.length / 3);
    } else if (SMOOTH.has(key)) smooth = true;
    // A part of a text can pass for OBJ; a file of something else has bytes that no text has.
    else if (key.includes('\0')) return fault(words.line(), 'This is no text.');
  } while (words.nextLine());
  if (triangles.length === 0) {
    return smooth
      ? refuse(
          'not-supported',
          '',
          'The file holds smooth surfaces only, and no faces.',
          'Write it again as triangles, or as STEP.',
        )
      : refuse('empty', '', 'The file holds no faces.', 'Choose another file, or write it again with its solid shown.');
  }
  const remarks = smooth ? ['Smooth surfaces in the file were passed over; its faces were taken.'] : [];
  return ok({ mesh: gathered(gatherer), unit: undefined, remarks });
}

const fault = (line: number, sentence: string) =>
  refuse('unreadable', `line ${line}`, sentence, 'Write the file again from the program that it came from.');
