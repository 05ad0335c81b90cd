import { useEffect, useState } from 'react';
import type { PartId, SetupId } from '../../../../shared/base/ids.ts';
import type { PictureSide } from '../../../../shared/machining/picture/picture.ts';
import type { SeenWork } from '../../../../shared/machining/picture/scene.ts';
import type { PartState } from '../../../../shared/solid/placed.ts';
import type { Picture } from '../../../engine/solid/picture.ts';
import { useEngine } from '../../../engine/use-engine.ts';

/** The shaded solid of a part, anew with each `version`; the last one stays until the next is there. */
export function useSolid(part: PartId, state: PartState, version: number): Picture | undefined {
  const engine = useEngine();
  const [shown, setShown] = useState<{ readonly part: PartId; readonly picture: Picture }>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: another version is another picture
  useEffect(() => {
    let late = false;
    void engine.ask('picture', { part, state }).then((picture) => {
      if (!late && picture !== undefined) setShown({ part, picture });
    });
    return () => {
      late = true;
    };
  }, [engine, part, state, version]);
  return shown?.part === part ? shown.picture : undefined;
}

export type SeenSides = Readonly<Partial<Record<PictureSide, SeenWork>>>;

const unseen: SeenSides = {};

/** The work of a set-up as each side of the picture sees it; the last look stays until the next is there. */
export function useSeenWork(setup: SetupId, sides: readonly PictureSide[], version: number): SeenSides {
  const engine = useEngine();
  const [shown, setShown] = useState<{ readonly setup: SetupId; readonly seen: SeenSides }>();
  const asked = sides.join(' ');
  // biome-ignore lint/correctness/useExhaustiveDependencies: sides are compared by their names; another version is another look
  useEffect(() => {
    let late = false;
    void engine.ask('seen-work', { setup, sides }).then((seen) => {
      if (!late && seen !== undefined)
        setShown((now) => ({ setup, seen: now?.setup === setup ? { ...now.seen, ...seen } : seen }));
    });
    return () => {
      late = true;
    };
  }, [engine, setup, asked, version]);
  return shown?.setup === setup ? shown.seen : unseen;
}
