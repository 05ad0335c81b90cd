import type { MachineId } from '../../shared/base/ids.ts';
import { err, ok, type Result } from '../../shared/base/result.ts';
import type { Machine } from '../../shared/build/machine.ts';
import { machineAsKept } from '../../shared/build/machine-as-kept.ts';
import type { ShopContent, ShopError } from '../../shared/ipc/shop-contract.ts';
import type { LengthUnit } from '../../shared/quantity/kind.ts';
import type { writeAtomically } from '../files/write-atomically.ts';
import { type KeptContent, openKeptList } from './kept-list.ts';
import { readShopText, SHOP_VERSION, writeShopText } from './shop-file.ts';

/** The machines of the user, entered once and shared by all builds. Every answer is the shop as it then is on disk. */
export interface Shop {
  load(): Promise<Result<ShopContent, ShopError>>;
  /**
   * Keeps a machine: in the place of the one of its id, else at the end of the list.
   * @param lengthUnit the unit of its lengths that are written without one
   */
  put(machine: Machine, lengthUnit: LengthUnit): Promise<Result<ShopContent, ShopError>>;
  /** Takes a machine out; builds that have it keep theirs. */
  remove(machine: MachineId): Promise<Result<ShopContent, ShopError>>;
}

export interface ShopOptions {
  /** Told of the shop after each change, and when the file was found changed by someone else. */
  readonly onChange?: (content: ShopContent) => void;
  /** How a file is written; replaced where writes are made to fail. */
  readonly write?: typeof writeAtomically;
}

const asShop = ({ items, lost }: KeptContent<Machine>): ShopContent => ({
  machines: items,
  lost: lost.map((loss) => (loss.is === 'item' ? { ...loss, is: 'machine' } : loss)),
});

/** Opens the shop of the user, kept as `shop.json` in the program's data folder with its last good copy beside it. */
export function openShop(dataFolder: string, { onChange, write }: ShopOptions = {}): Shop {
  const list = openKeptList<Machine>({
    folder: dataFolder,
    name: 'shop',
    version: SHOP_VERSION,
    readText: (text) => {
      const read = readShopText(text);
      return read.ok ? ok({ items: read.value.machines, bad: read.value.bad }) : read;
    },
    writeText: writeShopText,
    onChange: onChange && ((content) => onChange(asShop(content))),
    write,
  });
  const inShop = async (answer: Promise<Result<KeptContent<Machine>, ShopError>>) => {
    const content = await answer;
    return content.ok ? ok(asShop(content.value)) : content;
  };
  return {
    load: () => inShop(list.load()),
    put: (given, lengthUnit) =>
      inShop(
        list.change((machines): Result<readonly Machine[], ShopError> => {
          const there = machines.find(({ id }) => id === given.id);
          const order = there?.order ?? Math.floor(machines.at(-1)?.order ?? 0) + 1;
          const machine = machineAsKept({ ...given, order }, lengthUnit);
          if (!machine.ok) return err({ code: 'refused', refusal: machine.error });
          return ok(there ? machines.map((m) => (m === there ? machine.value : m)) : [...machines, machine.value]);
        }),
      ),
    remove: (id) => inShop(list.change((machines) => ok(machines.filter((machine) => machine.id !== id)))),
  };
}
