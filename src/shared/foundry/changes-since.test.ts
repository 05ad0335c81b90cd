import { expect, test } from 'vitest';
import { journalOf, sprue } from '../../../tests/support/sketch-pour.ts';
import type { BodyId, MachineId, PartId, PourId } from '../base/ids.ts';
import { defaultPour, type Insert, type Pour } from '../build/pour.ts';
import { changesSince } from './changes-since.ts';

const arbor: Insert = {
  name: 'arbor',
  mass: '0.23 kg',
  material: 'steel',
  preheat: '',
  length: '',
  around: 'body:boss' as BodyId,
  stays: true,
};
const first: Pour = {
  ...defaultPour('pour:1' as PourId, 'First attempt', 1),
  castings: [{ part: 'part:column' as PartId, count: 1, up: '+Z' }],
  temperature: '730',
  gating: sprue,
  inserts: [arbor],
  crucible: 'machine:pot' as MachineId,
  journal: journalOf({ temperature: '705 °C', change: 'Preheat the arbor.', result: 'scrap' }),
};
const nameOf = (id: string): string => id.split(':')[1]!;
const since = (more: Partial<Pour>) => changesSince(first, { ...first, id: 'pour:2' as PourId, ...more }, 'mm', nameOf);

test('a copy changes nothing, and what was to be changed stands in the journal’s words', () => {
  const { changes, asked, strayed } = since({
    name: 'Second attempt',
    journal: undefined,
    after: first.id,
    note: 'again',
    order: 2,
  });
  expect(changes).toEqual([]);
  expect(asked).toBe('Preheat the arbor.');
  expect(strayed).toEqual([{ field: 'temperature', label: 'Pouring temperature', planned: '730', done: '705 °C' }]);
});
test('a quantity that is only written otherwise is the same', () => {
  expect(since({ temperature: '730 °C', inserts: [{ ...arbor, mass: '230 g' }] }).changes).toEqual([]);
});
test('each change is named, with what was written and what was really done', () => {
  const { changes } = since({
    temperature: '745',
    castings: [{ part: 'part:column' as PartId, count: 1, up: '-Z' }],
    inserts: [{ ...arbor, preheat: '200' }],
    crucible: 'machine:large' as MachineId,
    gating: { ...sprue, gates: 3, sprueFoot: '16' },
  });
  expect(changes).toEqual([
    { field: 'castings/part:column/up', label: 'Up of column', from: '+Z', to: '-Z', done: undefined },
    { field: 'crucible', label: 'Crucible', from: 'pot', to: 'large', done: undefined },
    { field: 'temperature', label: 'Pouring temperature', from: '730', to: '745', done: '705 °C' },
    { field: 'gating/sprueFoot', label: 'Sprue at its foot', from: '14', to: '16', done: undefined },
    { field: 'gating/gates', label: 'Number of gates', from: '2', to: '3', done: undefined },
    { field: 'inserts/0/preheat', label: 'arbor: preheat', from: '', to: '200', done: undefined },
  ]);
});
test('what is added and what is gone', () => {
  const riser = { name: 'riser', on: 'body:boss' as BodyId, diameter: '40', height: '60' };
  expect(since({ risers: [riser] }).changes.map(({ field, from, to }) => [field, from, to])).toEqual([
    ['risers/0/on', '', 'boss'],
    ['risers/0/diameter', '', '40'],
    ['risers/0/height', '', '60'],
  ]);
  const gone = since({ inserts: [] }).changes;
  expect(gone.every(({ field, to }) => field.startsWith('inserts/0/') && to === '')).toBe(true);
  expect(gone.length).toBeGreaterThan(2);
});
