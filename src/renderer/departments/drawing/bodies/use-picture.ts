import { useEffect, useRef, useState } from 'react';
import type { PartId } from '../../../../shared/base/ids.ts';
import type { PartState } from '../../../../shared/solid/placed.ts';
import type { Picture } from '../../../engine/solid/picture.ts';
import { useEngine } from '../../../engine/use-engine.ts';

interface Shown {
  readonly part: PartId;
  readonly picture: Picture | undefined;
}

/**
 * The picture of a part, fetched when it changes. The last one of the same part stays until the next is there.
 *
 * @param version from the solid's view: 0 when there is no picture.
 */
export function usePicture(part: PartId, state: PartState, version: number): Picture | undefined {
  const engine = useEngine();
  const [shown, setShown] = useState<Shown>();
  const asked = useRef(0);
  useEffect(() => {
    const number = ++asked.current;
    if (version === 0) return setShown(undefined);
    void engine.ask('picture', { part, state }).then((picture) => {
      // An answer that comes when another has been asked for is of no use; nor is none while an edit is on its way.
      if (asked.current === number && picture !== undefined) setShown({ part, picture });
    });
  }, [engine, part, state, version]);
  return shown?.part === part ? shown.picture : undefined;
}
