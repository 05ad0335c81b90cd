import { unreachable } from '../../shared/base/assert.ts';
import type { CommitError } from '../../shared/ipc/contract.ts';
import type { OpenFile } from '../engine/engine.ts';
import { useEngine } from '../engine/use-engine.ts';
import { Banner } from '../kit/banner.tsx';
import { Button } from '../kit/button.tsx';

function reason(error: CommitError): string {
  switch (error.code) {
    case 'disk-full':
      return 'The disk is full. Make room, then try again.';
    case 'read-only':
      return 'The file can only be read. Allow writing to it, then try again; or take the edit back.';
    case 'stale-revision':
      return 'Another program has changed the file in the meantime. Take the edit back: the window then shows what is on disk.';
    case 'unwritable':
      return `The file could not be written: ${error.detail}. See to it, then try again.`;
    case 'nothing-to-step':
      return 'The journal on disk has no such step. Take it back: the window then shows what is on disk.';
    default:
      return unreachable(error);
  }
}

/** Stands while an edit is not on disk and cannot be put there, or while the build is for reading only. */
export function SaveBanner({ file }: { readonly file: OpenFile }) {
  const engine = useEngine();
  if (file.halted !== undefined) {
    const [first] = file.saving;
    const what =
      file.saving.length === 0
        ? 'The last step'
        : file.saving.length === 1
          ? `"${first}"`
          : `"${first}" and ${file.saving.length - 1} more`;
    return (
      <Banner
        severity="stop"
        actions={
          <>
            {file.halted.code !== 'stale-revision' && (
              <Button look="main" onClick={() => void engine.tryAgain()}>
                Try Again
              </Button>
            )}
            <Button look="stop" onClick={() => void engine.takeBack()}>
              Take Back
            </Button>
          </>
        }
      >
        <strong>{what} is not on disk.</strong> {reason(file.halted)} Further edits wait until then.
      </Banner>
    );
  }
  if (file.readOnly === undefined) return null;
  return (
    <Banner severity="note">
      {file.readOnly.why === 'held'
        ? `Open for reading only: ${file.readOnly.by} has had it open since ${timeOf(file.readOnly.since)}.`
        : 'Open for reading only: the file or its folder cannot be written. File › Save a Copy… makes one to edit.'}
    </Banner>
  );
}

const timeOf = (iso: string): string => {
  const time = new Date(iso);
  return Number.isNaN(time.getTime()) ? iso : time.toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
};
