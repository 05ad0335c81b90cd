import type { BodyForm, FormField } from './body-form.ts';

export interface FieldGroup {
  readonly key: string;
  readonly title: string;
  readonly fields: readonly FormField[];
  /** Number of the corner or repeat that the group is; undefined for the others. */
  readonly corner?: number;
  readonly repeat?: number;
}

/** The fields of a form in rows that belong together: along each axis, across it, sizes, corners, repeats. */
export function groupsOf(form: BodyForm, fields: readonly FormField[]): readonly FieldGroup[] {
  const groups = new Map<string, { group: Omit<FieldGroup, 'fields'>; fields: FormField[] }>();
  for (const one of fields) {
    const group = groupFor(form, one);
    const known = groups.get(group.key);
    if (known === undefined) groups.set(group.key, { group, fields: [one] });
    else known.fields.push(one);
  }
  return [...groups.values()]
    .map(({ group, fields: own }) => ({ ...group, fields: own }))
    .sort((a, b) => rankOf(a) - rankOf(b));
}

const rankOf = ({ corner, repeat, key }: FieldGroup): number =>
  repeat !== undefined ? 1e6 + repeat : corner !== undefined ? 1e3 + corner : key === 'sizes' ? 1e5 : 0;

function groupFor(form: BodyForm, one: FormField): Omit<FieldGroup, 'fields'> {
  const [where = '', name = '', third = ''] = one.field.split('/');
  if (where === 'repeats')
    return { key: `repeat ${name}`, title: repeatTitle(form, Number(name)), repeat: Number(name) };
  if (name === 'corners' || name === 'outline')
    return {
      key: `corner ${third}`,
      title: `${name === 'outline' ? 'Shoulder' : 'Corner'} ${Number(third) + 1}`,
      corner: Number(third),
    };
  if (one.is === 'size') {
    if (name === 'counterbore') return { key: name, title: 'Counterbore' };
    if (name === 'countersink') return { key: name, title: 'Countersink' };
    return { key: 'sizes', title: 'Sizes' };
  }
  if (name === 'x' || name === 'y' || name === 'z') return { key: name, title: `Along ${one.axis}` };
  if (name === 'ends' || ((name === 'from' || name === 'to') && third === '') || name === 'at')
    return { key: 'along', title: `Along ${form.axis}` };
  if (name === 'centres') return { key: `centre ${third}`, title: `Centre ${Number(third) + 1}` };
  if (name === 'from' || name === 'to') return { key: one.axis, title: `Along ${one.axis}` };
  return { key: name, title: name === 'origin' ? 'Its origin' : name === 'corner' ? 'Corner' : 'Centre' };
}

function repeatTitle(form: BodyForm, i: number): string {
  const repeat = form.repeats[i];
  switch (repeat?.type) {
    case 'circle':
      return `Round a circle about ${repeat.axis}`;
    case 'row':
      return `In a row along ${repeat.axis}`;
    case 'mirror':
      return `Mirrored along ${repeat.axis}`;
    default:
      return '';
  }
}
