import type { ReactNode } from 'react';
import type { OpenFile } from '../engine/engine.ts';
import { useView } from '../engine/use-engine.ts';
import { IconButton } from '../kit/button.tsx';
import { FindIcon, SettingsIcon } from '../kit/icons.tsx';
import { SeverityMark } from '../kit/marks.tsx';
import { Tip } from '../kit/tip.tsx';
import { useLatestIssue } from './issues.ts';

function Box({
  label,
  children,
  className = '',
}: {
  readonly label: string;
  readonly children: ReactNode;
  readonly className?: string;
}) {
  return (
    <div className={`title-box ${className}`}>
      <span className="lettering soft">{label}</span>
      <span className="title-value ellipsis">{children}</span>
    </div>
  );
}

interface TitleStripProps {
  readonly file: OpenFile;
  readonly onFind: () => void;
  readonly onSettings: () => void;
}

/** The window's title block: which build, how it stands, which issue of the drawings, whether it is on disk. */
export function TitleStrip({ file, onFind, onSettings }: TitleStripProps) {
  const summary = useView('summary', null);
  const issue = useLatestIssue(file);
  const counts = summary?.counts;
  return (
    <header className="title-strip">
      <Tip text={`${file.fileName}\n${file.folder}`}>
        <div className="title-box title-name">
          <span className="lettering soft">Build</span>
          <h1 className="title-value ellipsis">{summary?.settings.name ?? file.fileName}</h1>
        </div>
      </Tip>
      <Box label="Parts">
        <span className="figure">{summary?.parts.length ?? '…'}</span>
      </Box>
      <Box label="Dimensions">
        <span className="figure">{summary?.dimensions ?? '…'}</span>
      </Box>
      <Box label="Open findings">
        {counts === undefined ? (
          '…'
        ) : counts.stop + counts.caution + counts.note === 0 ? (
          'none'
        ) : (
          <span className="mark-row">
            {counts.stop > 0 && <SeverityMark severity="stop" count={counts.stop} />}
            {counts.caution > 0 && <SeverityMark severity="caution" count={counts.caution} />}
            {counts.note > 0 && <SeverityMark severity="note" count={counts.note} />}
          </span>
        )}
      </Box>
      <Box label="Units">{summary?.settings.lengthUnit === 'in' ? 'inch' : 'mm'}</Box>
      <Box label="Issue">{issue ?? 'none yet'}</Box>
      <SavedBox file={file} />
      <div className="title-tools">
        <IconButton label="Find a part, station or dimension" keys="Ctrl+F" icon={<FindIcon />} onClick={onFind} />
        <IconButton label="Build settings" keys="Ctrl+," icon={<SettingsIcon />} onClick={onSettings} />
      </div>
    </header>
  );
}

function SavedBox({ file }: { readonly file: OpenFile }) {
  const state =
    file.readOnly !== undefined
      ? 'reading only'
      : file.halted !== undefined
        ? 'not on disk'
        : file.saving.length > 0
          ? 'saving…'
          : 'saved';
  return (
    <Box label="On disk" className="title-saved">
      <span data-saved={state} className={state === 'not on disk' ? 'mark stop' : undefined}>
        {state}
      </span>
    </Box>
  );
}
