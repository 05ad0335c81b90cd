import { useMemo, useState } from 'react';
import type { LatheScene } from '../../../../shared/machining/picture/scene.ts';
import type { SetupModel } from '../../../engine/machining/models.ts';
import { Empty } from '../../../kit/empty.tsx';
import { SolidView } from '../../../view/solid-view.tsx';
import { laidInMachine, sweptGhost } from './swept-ghost.ts';
import { useSolid } from './use-solid.ts';

const nothing: ReadonlySet<string> = new Set();

/** What the three directions of the stage are here. */
const axisWords = ['bed', 'back', 'up'] as const;

/** The part as it is, in the solid that it sweeps, over the bed. */
export function SolidLook({ model, scene }: { readonly model: SetupModel; readonly scene: LatheScene }) {
  const { record } = model;
  const solid = useSolid(record.part, record.state.is === 'finished' ? 'finished' : 'as cast', model.picture);
  const { frame } = scene;
  const picture = useMemo(() => solid && laidInMachine(solid, frame), [solid, frame]);
  const ghost = useMemo(() => sweptGhost(scene), [scene]);
  const [lit, setLit] = useState(nothing);
  return (
    <SolidView
      label={`${model.part} in the solid that it sweeps, over the bed. Arrows turn it.`}
      picture={picture}
      ghost={ghost}
      lit={lit}
      also={nothing}
      of={record.id}
      onPick={(body) => setLit(body === undefined ? nothing : new Set([body]))}
      onStep={() => {}}
      wish={undefined}
      axes={axisWords}
      missing={
        <Empty title="No picture on this machine">
          <p>The shaded solid needs WebGL, which this machine does not offer. The drawn views say the same.</p>
        </Empty>
      }
    />
  );
}
