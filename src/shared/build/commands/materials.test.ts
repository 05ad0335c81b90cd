import { expect, test } from 'vitest';
import { idSource, type MaterialId, type PartId } from '../../base/ids.ts';
import { apply, invert } from '../diff.ts';
import { buildOf, materialsOf, partsOf } from '../look-up.ts';
import { defaultPart } from '../part.ts';
import type { Build } from '../records.ts';
import { defaultSettings } from '../settings.ts';
import { type CommandId, runCommand } from './registry.ts';

let seed = 1;
const newId = idSource(() => {
  seed = (Math.imul(seed, 1103515245) + 12345) >>> 0;
  return seed;
});

const run = (build: Build, id: CommandId, params: unknown) =>
  runCommand(build, id, params as never, { newId, now: '2026-11-25T00:00:00.000Z' });

function after(build: Build, id: CommandId, params: unknown): Build {
  const result = run(build, id, params);
  if (!result.ok) throw new Error(result.error.code);
  const next = apply(build, result.value.diff);
  expect(apply(next, invert(result.value.diff))).toEqual(build);
  return next;
}

const part = { ...defaultPart('part:a' as PartId, 'bed', 1), material: 'Scrap Wheels' };
const empty = buildOf([defaultSettings('Press'), part]);
const wheels = { name: 'scrap wheels', values: { densityKgM3: 2690 }, source: 'weighed' };
const withWheels = after(empty, 'material-add', { material: wheels });
const id = materialsOf(withWheels)[0]?.id as MaterialId;

test('a material is added, changed and removed', () => {
  expect(materialsOf(withWheels)).toEqual([{ kind: 'material', id, ...wheels }]);
  const changed = after(withWheels, 'material-set', { material: id, set: { values: { modulusGPa: 70 } } });
  expect(materialsOf(changed)[0]?.values).toEqual({ densityKgM3: 2690, modulusGPa: 70 });
  const forgotten = after(changed, 'material-set', { material: id, set: { values: { densityKgM3: undefined } } });
  expect(materialsOf(forgotten)[0]?.values).toEqual({ modulusGPa: 70 });
  expect(materialsOf(after(changed, 'material-remove', { material: id }))).toEqual([]);
});

test('a new name goes along to the parts that name it', () => {
  const renamed = after(withWheels, 'material-set', { material: id, set: { name: 'AlSi from wheels' } });
  expect(partsOf(renamed)[0]?.material).toBe('AlSi from wheels');
});

test.each([
  ['material-add', { material: { ...wheels, name: ' SCRAP wheels ' } }, 'material-name-taken'],
  ['material-add', { material: { ...wheels, name: '  ' } }, 'name-empty'],
  ['material-add', { material: { ...wheels, name: 'air', values: { densityKgM3: -1 } } }, 'field-refused'],
  ['material-set', { material: 'material:none', set: {} }, 'material-not-found'],
  ['material-remove', { material: 'material:none' }, 'material-not-found'],
] as const)('%s refuses: %j', (command, params, code) => {
  expect(run(withWheels, command, params)).toMatchObject({ ok: false, error: { code } });
});
