import { axesAcross } from './body-uses.ts';
import type { Casting } from './casting.ts';
import type { Pattern } from './pattern.ts';
import { gatherer, type PlanPair, type PlanUse, type PlanUses } from './plan-use.ts';
import type { Pour } from './pour.ts';
import type { Axis } from './station.ts';

/** Gathers what a casting names, in the order of its fields. */
export function usesOfCasting({ part, stock, sizeStock, up, parting, prints, lugs, bow, flask }: Casting): PlanUses {
  const uses: PlanUse[] = [];
  const pairs: PlanPair[] = [];
  const { station, places } = gatherer(part, uses, pairs);
  uses.push({ id: part, kind: 'part', field: 'part', loose: false });
  stock.forEach((face, i) => {
    uses.push({ id: face.station, kind: 'station', of: part, field: `stock/${i}/station`, loose: true });
  });
  sizeStock.forEach(({ size }, i) => {
    uses.push({ id: size, kind: 'dimension', of: part, field: `sizeStock/${i}/size`, loose: true });
  });
  // Mould and pattern part across the way in which they are drawn.
  const draw = up === undefined ? undefined : (up[1] as Axis);
  if (parting) station(parting.station, part, draw, 'parting/station');
  prints.forEach(({ body }, i) => {
    uses.push({ id: body, kind: 'body', of: part, field: `prints/${i}/body`, loose: true });
  });
  lugs.forEach(({ axis, ends, across }, i) => {
    places(ends, axis, `lugs/${i}/ends`);
    axesAcross(axis).forEach((other, k) => {
      places(across[k as 0 | 1], other, `lugs/${i}/across/${k}`);
    });
  });
  if (bow !== undefined) uses.push({ id: bow, kind: 'machine', field: 'bow', loose: true });
  if (flask !== undefined) uses.push({ id: flask, kind: 'machine', field: 'flask', loose: true });
  return { uses, pairs };
}

/** A pattern that was made names its part alone: what was measured on it stays, whatever becomes of the drawing. */
export const usesOfPattern = ({ part }: Pattern): PlanUses => ({
  uses: [{ id: part, kind: 'part', field: 'part', loose: false }],
  pairs: [],
});

/** Gathers what a pour names, in the order of its fields. */
export function usesOfPour({ castings, furnace, crucible, flask, risers, inserts, after }: Pour): PlanUses {
  const uses: PlanUse[] = [];
  const parts = [...new Set(castings.map(({ part }) => part))];
  castings.forEach(({ part, pattern }, i) => {
    uses.push({ id: part, kind: 'part', field: `castings/${i}/part`, loose: true });
    if (pattern !== undefined)
      uses.push({ id: pattern, kind: 'pattern', of: part, field: `castings/${i}/pattern`, loose: true });
  });
  for (const [field, machine] of Object.entries({ furnace, crucible, flask })) {
    if (machine !== undefined) uses.push({ id: machine, kind: 'machine', field, loose: true });
  }
  risers.forEach(({ on }, i) => {
    if (on !== undefined) uses.push({ id: on, kind: 'body', among: parts, field: `risers/${i}/on`, loose: true });
  });
  inserts.forEach(({ part, around }, i) => {
    if (part !== undefined) uses.push({ id: part, kind: 'part', field: `inserts/${i}/part`, loose: true });
    if (around !== undefined)
      uses.push({ id: around, kind: 'body', among: parts, field: `inserts/${i}/around`, loose: true });
  });
  if (after !== undefined) uses.push({ id: after, kind: 'pour', field: 'after', loose: true });
  return { uses, pairs: [] };
}

/** The value under its name, unless it is gone or never was. */
const kept = <K extends string, V extends string>(gone: ReadonlySet<string>, key: K, value: V | undefined) =>
  (value === undefined || gone.has(value) ? {} : { [key]: value }) as { readonly [P in K]?: V };

/** The casting without machines, prints, and stock of surfaces that are gone. */
export function castingWithout({ bow, flask, ...casting }: Casting, gone: ReadonlySet<string>): Casting {
  return {
    ...casting,
    stock: casting.stock.filter(({ station }) => !gone.has(station)),
    sizeStock: casting.sizeStock.filter(({ size }) => !gone.has(size)),
    prints: casting.prints.filter(({ body }) => !gone.has(body)),
    ...kept(gone, 'bow', bow),
    ...kept(gone, 'flask', flask),
  };
}

/** The pour without castings, patterns, machines and an earlier attempt that are gone; risers and inserts stay, and stand nowhere. */
export function pourWithout(pour: Pour, gone: ReadonlySet<string>): Pour {
  const { furnace, crucible, flask, after, ...rest } = pour;
  return {
    ...rest,
    castings: pour.castings
      .filter(({ part }) => !gone.has(part))
      .map(({ pattern, ...casting }) => ({ ...casting, ...kept(gone, 'pattern', pattern) })),
    ...kept(gone, 'furnace', furnace),
    ...kept(gone, 'crucible', crucible),
    ...kept(gone, 'flask', flask),
    risers: pour.risers.map(({ on, ...riser }) => ({ ...riser, ...kept(gone, 'on', on) })),
    inserts: pour.inserts.map(({ part, around, ...insert }) => ({
      ...insert,
      ...kept(gone, 'part', part),
      ...kept(gone, 'around', around),
    })),
    ...kept(gone, 'after', after),
  };
}
