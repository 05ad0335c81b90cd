import type { CommitError } from '../../shared/ipc/contract.ts';
import type { Engine } from '../engine/engine.ts';
import { notify } from './notices.ts';
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
