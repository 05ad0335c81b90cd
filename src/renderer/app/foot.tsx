import { IconButton } from '../kit/button.tsx';
import { RemoveIcon } from '../kit/icons.tsx';
import { SeverityMark } from '../kit/marks.tsx';
import { notify, useNotice } from './notices.ts';

/** The foot of the window: why the last edit was refused, or what was just done. */
export function Foot() {
  const notice = useNotice();
  if (notice === undefined) return null;
  return (
    <footer className={notice.isRefusal ? 'foot refusal' : 'foot'}>
      {notice.isRefusal && <SeverityMark severity="stop" />}
      <span className="grow">{notice.sentence}</span>
      <IconButton label="Dismiss" icon={<RemoveIcon />} onClick={() => notify(undefined)} />
    </footer>
  );
}
