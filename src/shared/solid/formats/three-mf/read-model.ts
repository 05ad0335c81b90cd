import { ok, type Result } from '../../../base/result.ts';
import type { CodedMesh } from '../../../build/mesh-code.ts';
import { gathered, type MeshGatherer, MOST_TRIANGLES, refuse, type SolidProblem } from '../mesh-file.ts';
import { readNumber } from '../scan-words.ts';
import { scanXml, type XmlElement } from './scan-xml.ts';

/** Namespaces of the 3MF Core Specification 1.3 and of the extensions that change nothing of the shape, or that are read. */
export const CORE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';
const PRODUCTION = 'http://schemas.microsoft.com/3dmanufacturing/production/2015/06';
const MATERIALS = 'http://schemas.microsoft.com/3dmanufacturing/material/2015/02';
const understood: readonly string[] = [CORE, PRODUCTION, MATERIALS];

/** Twelve numbers of a move: three rows of turning, then the shift; places are rows that stand before it. */
export type Transform = readonly number[];

/** One use of an object. */
export interface Reference {
  /** Path of the model that holds it, in lower case; undefined for the same model. */
  readonly path: string | undefined;
  readonly object: string;
  readonly transform: Transform | undefined;
}

export interface ModelObject {
  readonly type: string;
  readonly mesh: CodedMesh | undefined;
  readonly components: readonly Reference[];
}

export interface Model {
  /** As written, for example `millimeter`. */
  readonly unit: string;
  readonly objects: ReadonlyMap<string, ModelObject>;
  /** What is to be made, each in its place. */
  readonly items: readonly Reference[];
}

interface Draft {
  readonly type: string;
  readonly gatherer: MeshGatherer;
  readonly components: Reference[];
}

/** Reads one model of a package. @param path for messages */
export function readModel(text: string, path: string): Result<Model, SolidProblem> {
  const objects = new Map<string, ModelObject>();
  const items: Reference[] = [];
  let unit = 'millimeter';
  let draft: Draft | undefined;
  let draftId = '';
  let triangleCount = 0;
  let unknownExtension: string | undefined;
  let isModel = false;

  const open = (element: XmlElement): string | undefined => {
    if (element.space !== CORE) return undefined;
    switch (element.name) {
      case 'model':
        isModel = true;
        unit = element.attribute('unit') ?? unit;
        unknownExtension = neededBeyond(element);
        return unknownExtension === undefined ? undefined : 'It needs an extension.';
      case 'object':
        draftId = element.attribute('id') ?? '';
        draft = {
          type: element.attribute('type') ?? 'model',
          gatherer: { vertices: [], triangles: [] },
          components: [],
        };
        return draftId === '' || objects.has(draftId) ? 'An object has no number of its own.' : undefined;
      case 'vertex':
        return vertex(element, draft);
      case 'triangle':
        if (++triangleCount > MOST_TRIANGLES) return 'It has too many triangles.';
        return triangle(element, draft);
      case 'component':
      case 'item': {
        const reference = referenceOf(element);
        if (typeof reference === 'string') return reference;
        if (element.name === 'item') items.push(reference);
        else draft?.components.push(reference);
        return undefined;
      }
      default:
        return undefined;
    }
  };
  const close = (name: string, space: string): void => {
    if (space !== CORE || name !== 'object' || draft === undefined) return;
    const { type, gatherer, components } = draft;
    objects.set(draftId, { type, components, mesh: gatherer.triangles.length > 0 ? gathered(gatherer) : undefined });
    draft = undefined;
  };
  const problem = scanXml(text, { open, close });
  const again = 'Write the file again from the program that it came from.';
  if (unknownExtension !== undefined) {
    return refuse(
      'not-supported',
      path,
      `The model cannot be understood without the extension ${unknownExtension}.`,
      'Write it again as plain triangles.',
    );
  }
  if (triangleCount > MOST_TRIANGLES) {
    return refuse(
      'too-large',
      path,
      `The model has more than ${MOST_TRIANGLES} triangles.`,
      'Write it again with a coarser setting.',
    );
  }
  if (problem) return refuse('unreadable', `${path}, line ${problem.line}`, problem.sentence, again);
  if (!isModel) return refuse('unreadable', path, 'This is no 3MF model.', again);
  return ok({ unit, objects, items });
}

/** The first extension that the model says it needs and that is not understood here. */
function neededBeyond(element: XmlElement): string | undefined {
  const prefixes = (element.attribute('requiredextensions') ?? '').split(/\s+/).filter((prefix) => prefix !== '');
  const spaces = prefixes.map((prefix) => element.spaceOf(prefix) ?? prefix);
  return spaces.find((space) => !understood.includes(space))?.slice(0, 200);
}

function vertex(element: XmlElement, draft: Draft | undefined): string | undefined {
  for (const name of ['x', 'y', 'z']) {
    const given = element.attribute(name);
    const value = readNumber(given);
    if (value === undefined) return `A vertex has no place along ${name}: "${(given ?? '').slice(0, 40)}".`;
    draft?.gatherer.vertices.push(value);
  }
  return undefined;
}

function triangle(element: XmlElement, draft: Draft | undefined): string | undefined {
  if (draft === undefined) return undefined;
  const count = draft.gatherer.vertices.length / 3;
  for (const name of ['v1', 'v2', 'v3']) {
    const given = element.attribute(name) ?? '';
    const corner = /^\d{1,9}$/.test(given) ? Number(given) : Number.NaN;
    if (!(corner < count))
      return `A triangle names vertex "${given.slice(0, 40)}", and there are ${count}, counted from 0.`;
    draft.gatherer.triangles.push(corner);
  }
  return undefined;
}

function referenceOf(element: XmlElement): Reference | string {
  const object = element.attribute('objectid');
  if (object === undefined) return `An element "${element.name}" names no object.`;
  const written = element.attribute('transform');
  const transform = written
    ?.trim()
    .split(/\s+/)
    .map((word) => readNumber(word) ?? Number.NaN);
  if (transform !== undefined && (transform.length !== 12 || transform.some(Number.isNaN))) {
    return `The place of object ${object.slice(0, 40)} is not twelve numbers.`;
  }
  return { object, transform, path: element.attributeOf(PRODUCTION, 'path')?.toLowerCase() };
}
