import type { FileState } from '../engine/engine.ts';
import { FindDialog } from './find-dialog.tsx';
import { ImportCsvDialog } from './import-csv-dialog.tsx';
import { ImportJsonDialog } from './import-json-dialog.tsx';
import { ImportSolidDialog } from './import-solid-dialog.tsx';
import { IssueDialog } from './issue-dialog.tsx';
import { KeysDialog } from './keys-dialog.tsx';
import { SettingsDialog } from './settings-dialog.tsx';

export type DialogName = 'find' | 'settings' | 'keys' | 'issue' | 'import-csv' | 'import-json' | 'import-solid';

interface DialogsProps {
  readonly name: DialogName;
  readonly file: FileState;
  readonly onClose: () => void;
}

/** The dialog that is open. All but the keys need a build. */
export function Dialogs({ name, file, onClose }: DialogsProps) {
  if (name === 'keys') return <KeysDialog onClose={onClose} />;
  if (file.is !== 'open') return null;
  switch (name) {
    case 'find':
      return <FindDialog onClose={onClose} />;
    case 'settings':
      return <SettingsDialog onClose={onClose} />;
    case 'issue':
      return <IssueDialog file={file} onClose={onClose} />;
    case 'import-csv':
      return <ImportCsvDialog onClose={onClose} />;
    case 'import-json':
      return <ImportJsonDialog onClose={onClose} />;
    case 'import-solid':
      return <ImportSolidDialog onClose={onClose} />;
  }
}
