import { ok, type Result } from '../../../base/result.ts';
import type { MeshUnit } from '../../../build/solid.ts';
import {
  type FileMesh,
  gathered,
  type MeshGatherer,
  MOST_TRIANGLES,
  refuse,
  type SolidProblem,
  tooManyTriangles,
} from '../mesh-file.ts';
import { type Model, type ModelObject, type Reference, readModel, type Transform } from './read-model.ts';
import { scanXml } from './scan-xml.ts';
import { type PackageTexts, unpackModels } from './unpack.ts';

const RELATIONS = '/_rels/.rels';
const USUAL_MODEL = '/3d/3dmodel.model';
const MODEL_RELATION = 'http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel';

/** Objects within objects; each use counts, so that a few lines cannot unfold into millions of pieces. */
const DEEPEST = 32;
const MOST_USES = 10_000;

/** Units of 3MF (Core Specification 1.3, section 3.4); microns are taken as thousandths of a millimetre. */
const units: Readonly<Record<string, readonly [unit: MeshUnit, factor: number]>> = {
  micron: ['mm', 0.001],
  millimeter: ['mm', 1],
  centimeter: ['cm', 1],
  meter: ['m', 1],
  inch: ['in', 1],
  foot: ['ft', 1],
};

const WRITE_AGAIN = 'Write the file again from the program that it came from.';

/**
 * Reads a 3MF package (Core Specification 1.3, with the production extension's references between models): what its model
 * lists to be made, every object in its place. Colours and materials are left aside.
 */
export function read3mf(bytes: Uint8Array): Result<FileMesh, SolidProblem> {
  const texts = unpackModels(bytes);
  if (!texts.ok) return texts;
  const path = modelPath(texts.value);
  const text = texts.value.get(path);
  if (text === undefined) return refuse('unreadable', path, 'The package holds no 3MF model.', 'Choose another file.');
  const root = readModel(text, path);
  if (!root.ok) return root;
  const unit = units[root.value.unit];
  if (unit === undefined) {
    return refuse('unreadable', path, `"${root.value.unit.slice(0, 40)}" is no unit of a 3MF model.`, WRITE_AGAIN);
  }
  const models = new Map<string, Model>([[path, root.value]]);
  const remarks: string[] = [];
  const gatherer: MeshGatherer = { vertices: [], triangles: [] };
  let uses = 0;

  const modelAt = (where: string): Result<Model, SolidProblem> => {
    const known = models.get(where);
    if (known) return ok(known);
    const other = texts.value.get(where);
    if (other === undefined) return refuse('unreadable', where, 'The package does not hold this model.', WRITE_AGAIN);
    const read = readModel(other, where);
    if (read.ok) models.set(where, read.value);
    return read;
  };
  /** @returns why it cannot be taken, or undefined. */
  const take = (
    reference: Reference,
    from: string,
    outer: readonly Transform[],
    depth: number,
  ): SolidProblem | undefined => {
    const where = reference.path ?? from;
    const model = modelAt(where);
    if (!model.ok) return model.error;
    const object = model.value.objects.get(reference.object);
    const place = `${where}, object ${reference.object.slice(0, 40)}`;
    if (object === undefined) return refuse('unreadable', place, 'There is no such object.', WRITE_AGAIN).error;
    if (depth > DEEPEST) {
      return refuse('unreadable', place, 'Objects hold one another too deep, or in a ring.', WRITE_AGAIN).error;
    }
    if (++uses > MOST_USES) {
      return refuse('too-large', place, `Objects are used more than ${MOST_USES} times.`, WRITE_AGAIN).error;
    }
    if (object.type !== 'model' && object.type !== 'solidsupport') {
      remarks.push(`An object of the kind "${object.type.slice(0, 40)}" was left out.`);
      return undefined;
    }
    const transforms = reference.transform === undefined ? outer : [reference.transform, ...outer];
    if (!add(object, transforms, gatherer)) return tooManyTriangles(MOST_TRIANGLES).error;
    for (const component of object.components) {
      const problem = take(component, where, transforms, depth + 1);
      if (problem) return problem;
    }
    return undefined;
  };
  for (const item of root.value.items) {
    const problem = take(item, path, [], 0);
    if (problem) return { ok: false, error: problem };
  }
  if (gatherer.triangles.length === 0) {
    return refuse('empty', path, 'The model lists nothing to be made.', 'Write it again with its solid shown.');
  }
  const [name, factor] = unit;
  const mesh = gathered(gatherer);
  if (factor === 1) return ok({ mesh, unit: name, remarks });
  return ok({ mesh: { ...mesh, vertices: mesh.vertices.map((value) => value * factor) }, unit: name, remarks });
}

function modelPath(texts: PackageTexts): string {
  const relations = texts.get(RELATIONS);
  let target: string | undefined;
  if (relations !== undefined) {
    scanXml(relations, {
      open(element) {
        if (element.name === 'Relationship' && element.attribute('Type') === MODEL_RELATION) {
          target ??= element.attribute('Target');
        }
        return undefined;
      },
      close() {},
    });
  }
  return target === undefined ? USUAL_MODEL : `/${target.replace(/^\/+/, '').toLowerCase()}`;
}

/** @returns whether there was room for the object's own triangles. */
function add({ mesh }: ModelObject, transforms: readonly Transform[], { vertices, triangles }: MeshGatherer): boolean {
  if (mesh === undefined) return true;
  if ((triangles.length + mesh.triangles.length) / 3 > MOST_TRIANGLES) return false;
  const base = vertices.length / 3;
  for (let i = 0; i < mesh.vertices.length; i += 3) {
    let place = [mesh.vertices[i]!, mesh.vertices[i + 1]!, mesh.vertices[i + 2]!];
    for (const m of transforms) {
      const [x = 0, y = 0, z = 0] = place;
      place = [0, 1, 2].map((axis) => x * m[axis]! + y * m[3 + axis]! + z * m[6 + axis]! + m[9 + axis]!);
    }
    vertices.push(place[0]!, place[1]!, place[2]!);
  }
  // A mirror image turns the faces inside out.
  const mirrors = transforms.reduce((odd, m) => (determinant(m) < 0 ? !odd : odd), false);
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const [a, b, c] = [mesh.triangles[i]!, mesh.triangles[i + 1]!, mesh.triangles[i + 2]!];
    if (mirrors) triangles.push(base + a, base + c, base + b);
    else triangles.push(base + a, base + b, base + c);
  }
  return true;
}

const determinant = (m: Transform): number =>
  m[0]! * (m[4]! * m[8]! - m[5]! * m[7]!) -
  m[1]! * (m[3]! * m[8]! - m[5]! * m[6]!) +
  m[2]! * (m[3]! * m[7]! - m[4]! * m[6]!);
