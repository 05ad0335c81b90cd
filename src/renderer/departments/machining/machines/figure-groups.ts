import { type MachineType, machineFigures } from '../../../../shared/tables/machine-figures.ts';

interface FigureGroup {
  readonly title: string;
  readonly keys: readonly string[];
}

/** Figures of a lathe are many: they stand by what one measures at once. */
const lathe: readonly (readonly [title: string, matches: RegExp])[] = [
  ['What swings', /^(swing|gap)/],
  ['Along the bed', /^(betweenCentres|tail|barrel|headCentre|spindleBore)/],
  ['Saddle and tool', /^(saddle|cross|topSlide|tool)/],
  ['Face plate', /^facePlate/],
  ['Three-jaw chuck', /^threeJaw/],
  ['Four-jaw chuck', /^(fourJaw|jawReach)/],
  ['Fixed steady', /^steady/],
  ['Drive', /^(slowest|fastest|power)/],
];

const others: readonly (readonly [title: string, matches: RegExp])[] = [
  ['Drive', /^(slowest|fastest|power)/],
  ['Table', /^table/],
  ['Chuck', /^chuck/],
];

/** The figures of a type in groups, in the order of its form; what belongs to none stands first. */
export function groupsOf(type: MachineType): readonly FigureGroup[] {
  const rules = type === 'lathe' ? lathe : others;
  const keys = machineFigures[type].map(({ key }) => key);
  const groupOf = (key: string) => rules.find(([, matches]) => matches.test(key))?.[0] ?? 'Size';
  const titles = [...new Set(keys.map(groupOf))].sort((a, b) => place(rules, a) - place(rules, b));
  return titles.map((title) => ({ title, keys: keys.filter((key) => groupOf(key) === title) }));
}

function place(rules: typeof lathe, title: string): number {
  const at = rules.findIndex(([one]) => one === title);
  if (at < 0) return -1;
  // A drive is looked at last.
  return title === 'Drive' ? rules.length : at;
}
