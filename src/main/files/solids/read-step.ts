import { ok, type Result } from '../../../shared/base/result.ts';
import {
  type FileMesh,
  gathered,
  type MeshGatherer,
  MOST_TRIANGLES,
  refuse,
  type SolidProblem,
  tooManyTriangles,
} from '../../../shared/solid/formats/mesh-file.ts';

/**
 * How far flat faces may stand off the round ones that they replace, in mm, finest first, and the triangles beyond which the
 * next is tried. The first keeps the volume of an ordinary bracket within about 20 ppm.
 */
const finenesses = [
  { offMm: 0.005, angleRad: 0.1, mostTriangles: 100_000 },
  { offMm: 0.02, angleRad: 0.2, mostTriangles: 300_000 },
  { offMm: 0.1, angleRad: 0.4, mostTriangles: MOST_TRIANGLES },
] as const;

/**
 * Reads the solids of a STEP file (ISO 10303-21), in millimetres whatever unit the file is in. The reader, a library of its
 * own under the LGPL with a file of WebAssembly beside it, is loaded by the first call.
 */
export async function readStep(bytes: Uint8Array): Promise<Result<FileMesh, SolidProblem>> {
  const { default: load } = await import('occt-import-js');
  const said: string[] = [];
  // Whatever it prints would land on standard output, which belongs to the command.
  const hear = (text: string): void => {
    if (said.length < 20 && /ERR/i.test(text)) said.push(text.replace(/\*+/g, ' ').replace(/\s+/g, ' ').trim());
  };
  for (const { offMm, angleRad, mostTriangles } of finenesses) {
    // A fresh one each time: what one reading has left in its memory would burden the next.
    const reader = await load({ print: hear, printErr: hear });
    let meshes: ReturnType<typeof reader.ReadStepFile>['meshes'];
    try {
      const reading = reader.ReadStepFile(bytes, {
        linearUnit: 'millimeter',
        linearDeflectionType: 'absolute_value',
        linearDeflection: offMm,
        angularDeflection: angleRad,
      });
      if (!reading.success) return unreadable(said);
      meshes = reading.meshes ?? [];
    } catch {
      // Only a damaged file brings it down, or one that asks for more than two gigabytes of memory.
      return unreadable(said);
    }
    const count = meshes.reduce((sum, { index }) => sum + index.array.length / 3, 0);
    if (count === 0) {
      return refuse(
        'empty',
        '',
        'The file holds no surface with an area.',
        'Write it again from the program that it came from, as a solid and not as lines.',
      );
    }
    if (count > mostTriangles) continue;
    const gatherer: MeshGatherer = { vertices: [], triangles: [] };
    for (const { attributes, index } of meshes) {
      const base = gatherer.vertices.length / 3;
      for (const value of attributes.position.array) gatherer.vertices.push(value);
      for (const corner of index.array) gatherer.triangles.push(base + corner);
    }
    const remarks = [`Round faces are made of flat ones that stand off by up to ${offMm} mm.`];
    return ok({ mesh: gathered(gatherer), unit: 'mm', remarks });
  }
  return tooManyTriangles(MOST_TRIANGLES);
}

function unreadable(said: readonly string[]) {
  const line = /Line (\d+)/i.exec(said[0] ?? '')?.[1];
  return refuse(
    'unreadable',
    line === undefined ? '' : `line ${line}`,
    'The file cannot be read as STEP.',
    'Write it again from the program that it came from, as AP203, AP214 or AP242.',
  );
}
