import type { PartId } from '../../../shared/base/ids.ts';
import type { RecordId } from '../../../shared/build/records.ts';
import type { Setup } from '../../../shared/build/setup.ts';
import { type ResolvedWork, resolveWork } from '../../../shared/machining/setups/resolve-work.ts';
import { type Scene as MachineScene, sceneOf } from '../../../shared/machining/setups/scene.ts';
import type { PartInput, SetupInput } from '../../../shared/machining/setups/setup-input.ts';
import { type Numbers, numbersOf } from '../../../shared/plan/numbers.ts';
import { materialNamed } from '../../../shared/tables/materials.ts';
import type { Scene } from '../view.ts';

/** All that a set-up is worked out from, as the build has it now. */
function setupInput(scene: Scene, setup: Setup): SetupInput & { readonly numbers: Numbers } {
  const { index, works, solids } = scene;
  const own = index.materials();
  const partOf = (id: PartId): PartInput | undefined => {
    const part = index.part(id);
    return (
      part && {
        part,
        bodies: solids.bodiesOf(id),
        operations: index.operationsOf(id),
        figures: solids.figuresOf(id),
        material: materialNamed(part.material, own),
      }
    );
  };
  return {
    setup,
    numbers: numbersOf(works.drawing, (id: RecordId) => works.build.get(id)),
    lengthUnit: index.settings().lengthUnit,
    machines: index.machines(),
    partOf,
    materialNamed: (name) => materialNamed(name, own),
  };
}

/** What is put into the machine, and the set-up on its machine; the latter undefined while either is not known. */
export function machineScene(
  scene: Scene,
  setup: Setup,
): { readonly work: ResolvedWork; readonly on: MachineScene | undefined } {
  const input = setupInput(scene, setup);
  const work = resolveWork(input);
  const machine = setup.machine === undefined ? undefined : scene.index.machine(setup.machine);
  // Without its line the work would lie about the datum: it is not drawn.
  const isPlaced = work.worlds !== undefined && setup.line.through !== undefined;
  const on = isPlaced && machine ? sceneOf(input, work, work.worlds, setup, machine) : undefined;
  return { work, on };
}
