import { expect, test } from 'vitest';
import type { Command } from '../command.ts';
import { refusals } from '../refusals.ts';
import { commands } from './registry.ts';

const modules = import.meta.glob<Command<never>>(['./*.ts', '!./*.test.ts', '!./registry.ts'], {
  eager: true,
  import: 'default',
});

test('the list and the folder hold the same commands, each named after its file', () => {
  const files = Object.keys(modules).map((path) => path.slice(2, -3));
  expect(Object.keys(commands).sort()).toEqual(files.sort());
  for (const [id, command] of Object.entries(commands)) expect(command.id).toBe(id);
});

test('every refusal says what is wrong and what to do, in whole sentences', () => {
  for (const [sentence, remedy] of Object.values(refusals)) {
    expect(sentence).toMatch(/^[A-Z"{][^!]*\.$/);
    expect(remedy).toMatch(/^(?:[A-Z"][^!]*\.|\{remedy\})$/);
  }
});
