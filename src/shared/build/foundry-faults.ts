import type { Casting } from './casting.ts';
import type { PlanFault } from './plan-fault.ts';
import type { Pour } from './pour.ts';
import type { BuildRecord, RecordId } from './records.ts';

type Get = (id: RecordId) => BuildRecord | undefined;

/** What of a casting contradicts itself: one surface or one core of which two things are said. */
export function faultsOfCasting({ stock, sizeStock, prints }: Casting, get: Get): readonly PlanFault[] {
  return [
    ...twice(
      stock.map(({ station }) => station),
      (i) => `stock/${i}/station`,
      'stock is given twice on',
      get,
    ),
    ...twice(
      sizeStock.map(({ size }) => size),
      (i) => `sizeStock/${i}/size`,
      'stock is given twice on',
      get,
    ),
    ...twice(
      prints.map(({ body }) => body),
      (i) => `prints/${i}/body`,
      'prints are given twice for',
      get,
    ),
  ];
}

function twice(
  ids: readonly RecordId[],
  field: (index: number) => string,
  words: string,
  get: Get,
): readonly PlanFault[] {
  return ids.flatMap((id, i) => {
    if (ids.indexOf(id) === i) return [];
    const record = get(id);
    const name = record && 'name' in record ? `"${record.name}"` : id;
    return [
      { code: 'named-twice', field: field(i), what: `${words} ${name}`, remedy: 'Keep one of the two.' } as const,
    ];
  });
}

/** Whether a pour comes, over whatever attempts, after itself. */
export function faultsOfPour({ id, name, after }: Pour, get: Get): readonly PlanFault[] {
  const seen = new Set<string>();
  for (let at = after; at !== undefined && !seen.has(at); ) {
    if (at === id) {
      const what = after === id ? `"${name}" cannot come after itself` : `"${name}" would come after itself`;
      return [{ code: 'after-itself', field: 'after', what, remedy: 'Name an earlier attempt.' }];
    }
    seen.add(at);
    const earlier = get(at);
    at = earlier?.kind === 'pour' ? earlier.after : undefined;
  }
  return [];
}
