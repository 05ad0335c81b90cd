import type { SetupId } from '../../../shared/base/ids.ts';
import { judgedOf } from '../../../shared/machining/picture/judged.ts';
import type { PictureSide } from '../../../shared/machining/picture/picture.ts';
import { pictureScene } from '../../../shared/machining/picture/picture-scene.ts';
import type { SeenWork } from '../../../shared/machining/picture/scene.ts';
import { seenWork } from '../../../shared/machining/picture/seen-work.ts';
import { checkOf } from '../machining/checks.ts';
import { machineScene } from '../machining/setup-scene.ts';
import type { Ask } from '../view.ts';

interface SeenWorkParams {
  readonly setup: SetupId;
  readonly sides: readonly PictureSide[];
}

/** The work of a set-up as it is seen from the sides of its picture; undefined while it is not known how it lies. */
export const seenWorkAsk: Ask<SeenWorkParams, Readonly<Partial<Record<PictureSide, SeenWork>>> | undefined> = async (
  scene,
  { setup: id, sides },
) => {
  const setup = scene.index.setup(id);
  const check = setup && checkOf(scene, setup);
  const on = setup && machineScene(scene, setup).on;
  if (setup === undefined || check === undefined || on === undefined) return undefined;
  const picture = pictureScene(on, judgedOf(check));
  if (picture === undefined) return undefined;
  const state = setup.state.is === 'finished' ? 'finished' : 'as cast';
  const { solids, measuring } = scene;
  const measured = solids.solidOf(setup.part) && (await measuring.meshOf(setup.part, state));
  const mesh = measured ?? solids.liveMeshOf(setup.part, state);
  const work = { pieces: on.worlds.pieces, line: on.worlds.drawn.line, part: setup.part, mesh };
  return Object.fromEntries(sides.map((side) => [side, seenWork(work, picture.frame, side)]));
};
