import { formatQuantity } from '../../../shared/quantity/format.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';
import { table } from '../layout.ts';
import type { BodyOutput, SolidOutput } from '../output/solid-output.ts';

const MM_PER_INCH = 25.4;

/** Bodies as a table: what each does, and why one has no solid. */
export function bodyTable(bodies: readonly BodyOutput[]): string {
  const rows = bodies.map(({ name, shape, adds, finish, copies, idle, whyNot }) => [
    name,
    copies > 1 ? `${shape}, ${copies} off` : shape,
    adds ? 'adds' : 'takes away',
    finish,
    whyNot ? troubleOf(whyNot) : idle ? 'changes nothing' : '',
  ]);
  return table([{ head: 'body' }, { head: 'shape' }, { head: 'does' }, { head: 'made' }, { head: 'trouble' }], rows);
}

function troubleOf({ why, code, at }: NonNullable<BodyOutput['whyNot']>): string {
  const where = at.length > 0 ? ` (${at.join(', ')})` : '';
  switch (why) {
    case 'not-placed':
      return `not placed${where}`;
    case 'no-size':
      return `has no size${where}`;
    case 'shape':
      return `its shape does not hold: ${(code ?? '').replaceAll('-', ' ')}${where}`;
    case 'refused':
      return `no closed solid: ${code}`;
  }
}

/** Mass and the rest of both states, side by side; one column when nothing is machined. */
export function solidTable({ finished, asCast }: SolidOutput, unit: LengthUnit): string {
  const states = JSON.stringify(finished) === JSON.stringify(asCast) ? [finished] : [finished, asCast];
  const length = (mm: number) => formatQuantity(mm, 'length', { unit, bare: true, firm: true });
  const number = (value: number) => formatQuantity(value, 'number', { unit, decimals: 3 });
  const [perVolume, perArea] = unit === 'mm' ? [1e3, 1e2] : [MM_PER_INCH ** 3, MM_PER_INCH ** 2];
  const [volume, area] = unit === 'mm' ? ['cm³', 'cm²'] : ['in³', 'in²'];
  const row = (head: string, of: (state: SolidOutput['finished']) => string) => [head, ...states.map(of)];
  const rows = [
    row('volume', ({ volumeMm3 }) => `${number(volumeMm3 / perVolume)} ${volume}`),
    row('mass', ({ massKg }) =>
      massKg === undefined ? 'density not known' : formatQuantity(massKg, 'mass', { unit }),
    ),
    row('surface', ({ areaMm2 }) => `${number(areaMm2 / perArea)} ${area}`),
    row(
      'size',
      ({ boxMinMm, boxMaxMm }) => `${boxMaxMm.map((max, k) => length(max - boxMinMm[k]!)).join(' × ')} ${unit}`,
    ),
    row(
      'centre',
      ({ centreMm }) => `X ${length(centreMm[0])}  Y ${length(centreMm[1])}  Z ${length(centreMm[2])} ${unit}`,
    ),
    row('pieces', ({ pieces }) => String(pieces)),
  ];
  return table([{ head: '' }, { head: 'finished' }, ...(states.length > 1 ? [{ head: 'as cast' }] : [])], rows);
}
