import { Suspense, useEffect, useLayoutEffect, useMemo, useState } from 'react';
import type { PartId } from '../../shared/base/ids.ts';
import { useEngine, useFile, useView } from '../engine/use-engine.ts';
import { Announcer } from '../kit/announcer.tsx';
import { Materials } from '../materials/materials-dialog.tsx';
import { departments } from './departments.ts';
import { type DialogName, Dialogs } from './dialogs.tsx';
import { Foot } from './foot.tsx';
import { useKeys } from './keys.ts';
import { useMenu } from './menu.ts';
import { Mishap } from './mishap.tsx';
import { NoBuild, OpenFailed } from './no-build.tsx';
import { goTo, placeNow, usePlace } from './place.ts';
import { Rail } from './rail.tsx';
import { SaveBanner } from './save-banner.tsx';
import { TitleStrip } from './title-strip.tsx';
import { useWindowState } from './window-state.ts';

export function App() {
  const engine = useEngine();
  const file = useFile();
  const [dialog, setDialog] = useState<DialogName>();
  useMenu(engine, setDialog);
  useKeys(engine, setDialog);
  useWindowState(file);
  useFirstPart(file.is === 'open' ? file.first : undefined);

  const { department, part: partOnShow } = usePlace();
  useFirstFocus(department);
  usePreparedRooms();
  const shown = departments.find(({ id }) => id === department) ?? departments[0];
  // One element for as long as the room stays: what changes in it, it hears of itself, and this need not draw it anew.
  const room = useMemo(() => shown && <shown.View />, [shown]);
  return (
    <div className="window">
      {file.is === 'open' && (
        <>
          <TitleStrip file={file} onFind={() => setDialog('find')} onSettings={() => setDialog('settings')} />
          <SaveBanner file={file} />
          <div className="rooms">
            <Rail />
            <main className="room" data-department={shown?.id}>
              <Mishap place={`${shown?.id} ${partOnShow}`}>
                <Suspense fallback={null}>{room}</Suspense>
              </Mishap>
            </main>
          </div>
          <Foot />
          <Materials />
        </>
      )}
      {file.is === 'none' && <NoBuild />}
      {file.is === 'failed' && <OpenFailed error={file.error} />}
      {dialog !== undefined && <Dialogs name={dialog} file={file} onClose={() => setDialog(undefined)} />}
      <Announcer />
    </div>
  );
}

/** Frames in which a room may take to show what can be focused. */
const LOOKS = 60;

/** When a build is opened, or a room entered by key, the keys work at once: its first list has the focus. */
function useFirstFocus(department: string): void {
  const isThere = useView('summary', null) !== undefined;
  useEffect(() => {
    // Where it was is gone; where it is, it stays.
    if (!isThere || department === '') return;
    let looks = LOOKS;
    const look = () => {
      if (document.activeElement !== document.body) return;
      const first = document.querySelector<HTMLElement>('.room [data-pane-entry], .room .empty button');
      if (first !== null) first.focus();
      else if (looks-- > 0) frame = requestAnimationFrame(look);
    };
    let frame = requestAnimationFrame(look);
    return () => cancelAnimationFrame(frame);
  }, [isThere, department]);
}

/** When the findings are there and the window has come to rest, the rooms that come by themselves are fetched. */
function usePreparedRooms(): void {
  const isThere = useView('summary', null) !== undefined;
  useEffect(() => {
    if (!isThere) return;
    const waiting = requestIdleCallback(() => {
      for (const room of departments) room.prepare?.();
    });
    return () => cancelIdleCallback(waiting);
  }, [isThere]);
}

/**
 * When a build is opened, or the selected part goes, the first part is selected.
 * @param opening the first part as the build was opened: known before the engine has worked anything out.
 */
function useFirstPart(opening: PartId | undefined): void {
  const summary = useView('summary', null);
  const { part } = usePlace();
  useLayoutEffect(() => {
    if (opening !== undefined && placeNow().part === undefined) goTo({ part: opening });
  }, [opening]);
  useEffect(() => {
    if (summary === undefined) return;
    if (part !== undefined && summary.parts.some(({ id }) => id === part)) return;
    const first = summary.parts[0]?.id;
    if (first !== part) goTo({ part: first });
  }, [summary, part]);
}
