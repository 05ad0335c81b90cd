import type { CommitError } from '../../shared/ipc/contract.ts';
import type { Engine } from '../engine/engine.ts';
import { notify } from './notices.ts';
import { placeNow } from './place.ts';
import { shell } from './shell.ts';

const safeName = (name: string): string => name.replace(/[\\/:*?"<>|]/g, ' ').trim() || 'build';

const reason = (error: CommitError): string =>
  error.code === 'disk-full'
    ? 'the disk is full. Make room, then export again.'
    : error.code === 'unwritable'
      ? `${error.detail}. Choose another place, then export again.`
      : 'the place cannot be written. Choose another, then export again.';

async function save(engine: Engine, kind: 'csv' | 'json'): Promise<void> {
  const exported = await engine.ask('export', { kind });
  if (exported === undefined)
    return notify({ sentence: 'No build is open, so there is nothing to export.', isRefusal: true });
  const answer = await shell.invoke('files:save-text', {
    kind,
    suggestedName: `${safeName(exported.name)}.${kind}`,
    text: exported.text,
  });
  if (!answer.ok) notify({ sentence: `Not exported: ${reason(answer.error)}`, isRefusal: true });
  else if (answer.value !== undefined) notify({ sentence: `Exported to ${answer.value.path}.`, isRefusal: false });
}

export const exportCsv = (engine: Engine): Promise<void> => save(engine, 'csv');
export const exportJson = (engine: Engine): Promise<void> => save(engine, 'json');

/** Writes the finished solid of the part on show. */
export async function exportSolid(engine: Engine, kind: 'stl' | '3mf'): Promise<void> {
  const made = await engine.ask('export-solid', { part: placeNow().part, kind });
  if (made === undefined || !made.ok) {
    const sentence = made?.error ?? 'No build is open, so there is nothing to export.';
    return notify({ sentence, isRefusal: true });
  }
  const { name, bytes, missing } = made.value;
  const suggestedName = `${safeName(name)}.${kind}`;
  const answer = await shell.invoke('files:save-solid', { kind, suggestedName, bytes });
  if (!answer.ok) notify({ sentence: `Not exported: ${reason(answer.error)}`, isRefusal: true });
  else if (answer.value !== undefined) {
    const without = missing.length > 0 ? ` Not in it, because they are not placed: ${missing.join(', ')}.` : '';
    notify({ sentence: `Exported to ${answer.value.path}.${without}`, isRefusal: false });
  }
}
