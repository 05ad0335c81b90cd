import { beginsAsText, isExactBinaryStl } from './read-stl.ts';

/** Forms of solids in files. */
export const solidForms = ['step', 'stl', 'obj', '3mf'] as const;
export type SolidForm = (typeof solidForms)[number];

const byEnding: Readonly<Record<string, SolidForm>> = {
  step: 'step',
  stp: 'step',
  p21: 'step',
  stl: 'stl',
  obj: 'obj',
  '3mf': '3mf',
};

/** Endings of names under which solids are found, without the dot. */
export const solidEndings = Object.keys(byEnding);

const STEP_HEAD = 'ISO-10303-21;';

/**
 * Which form a file of a solid has: by its first bytes where they say it, otherwise by the ending of its name. Undefined
 * when neither says.
 */
export function solidForm(fileName: string, bytes: Uint8Array): SolidForm | undefined {
  const head = String.fromCharCode(...bytes.subarray(0, 256)).replace(/^\u00ef\u00bb\u00bf/, '');
  if (head.trimStart().startsWith(STEP_HEAD)) return 'step';
  if (head.startsWith('PK\u0003\u0004')) return '3mf';
  if (isExactBinaryStl(bytes)) return 'stl';
  const ending = byEnding[fileName.slice(fileName.lastIndexOf('.') + 1).toLowerCase()];
  if (ending === 'stl' || ending === 'obj') return ending;
  return beginsAsText(bytes) ? 'stl' : ending;
}
