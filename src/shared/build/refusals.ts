/** Why a command refuses: what is wrong, and what to do. `{placeholders}` are filled from the refusal's data. */
export const refusals = {
  'part-not-found': ['The part is no longer in the build.', 'Choose a part from the list of parts.'],
  'station-not-found': ['The station is no longer in the build.', 'Choose a station of this part.'],
  'dimension-not-found': ['The dimension is no longer in the build.', 'Choose a dimension of this part.'],
  'body-not-found': ['The body is no longer in the build.', 'Choose a body of this part.'],
  'machine-not-found': ['The machine is no longer in the build.', 'Choose one of the build’s machines.'],
  'setup-not-found': ['The set-up is no longer in the build.', 'Choose a set-up of this part.'],
  'operation-not-found': ['The operation is no longer in the build.', 'Choose an operation of this part.'],
  'generic-machine-unknown': [
    'There is no generic row "{given}" of a {type}.',
    'Choose one of the size classes, or begin with an empty machine.',
  ],
  'order-does-not-fit': [
    'The order does not hold each operation of {part} once.',
    'Ask for an order again: the route has changed since.',
  ],
  'material-not-found': ['The material is no longer in the build.', 'Choose one of the build’s own materials.'],
  'material-name-taken': [
    'The build has a material "{name}" of its own already.',
    'Change that one, or write another name.',
  ],
  'alloy-not-found': ['The alloy is no longer in the build.', 'Choose one of the build’s own alloys.'],
  'alloy-name-taken': [
    'The build has an alloy "{name}" of its own already.',
    'Change that one, or write another name.',
  ],
  'alloy-figures-cross': [
    'The {low} of "{name}" ({lowValue}) is more than its {high} ({highValue}).',
    'Write both, the lower one first; what a row of the build’s own leaves out is taken from the table.',
  ],
  'pattern-not-found': ['The pattern is no longer in the build.', 'Choose a pattern of this part.'],
  'pour-not-found': ['The pour is no longer in the build.', 'Choose one of the build’s pours.'],
  'pour-without-journal': ['Nothing is written yet of how "{name}" went.', 'Nothing needs striking out.'],
  'weighing-empty': ['The weighing has no mass.', 'Write what the scale showed, such as 1.234 kg.'],
  'weighing-there': [
    'A weighing of that moment is noted already: {mass}.',
    'Remove that one first, or write another moment.',
  ],
  'weighing-not-found': ['There is no weighing of that moment.', 'Choose one of the weighings of this pattern.'],
  'acceptance-not-found': ['This finding is not accepted any more.', 'Nothing needs withdrawing.'],
  'nothing-given': ['Nothing was given to change.', 'Select at least one row and change a field.'],
  'field-refused': ['The {field} "{given}" cannot be kept.', 'Write {expected}.'],
  'name-empty': ['The {what} has no name.', 'Write a name of at least one letter or digit.'],
  'not-of-this-part': [
    '"{station}" is a station of another part.',
    'Choose two stations of the same part as the dimension.',
  ],
  'same-station': ['A dimension cannot run from "{station}" to itself.', 'Choose two different stations.'],
  'different-axes': [
    '"{from}" lies along {fromAxis} and "{to}" along {toAxis}.',
    'Choose two stations of the same axis, or make a size of it.',
  ],
  'station-axis-used': [
    '{count} dimensions measure from or to "{station}" along {axis}.',
    'Remove those dimensions or point them at other stations, then change the axis.',
  ],
  'needed-by-bodies': [
    '{bodies} {hang} on {what}.',
    'Remove those bodies first, or place them on other stations and sizes.',
  ],
  'measure-needed-by-body': [
    'The body "{body}" takes "{dimension}" for a size, for which {wanted} is wanted.',
    'Give the body another size first, or leave what the dimension measures as it is.',
  ],
  'needed-by-plans': ['{plans} {need} {what}.', 'Take it out there first, or remove what needs it.'],
  'measure-needed-by-plan': [
    'The {plan} takes "{dimension}" for a size, for which {wanted} is wanted.',
    'Name another size there first, or leave what the dimension measures as it is.',
  ],
  'setup-does-not-hold': ['The set-up cannot be kept: {what}.', '{remedy}'],
  'operation-does-not-hold': ['The operation cannot be kept: {what}.', '{remedy}'],
  'casting-does-not-hold': ['The casting cannot be kept: {what}.', '{remedy}'],
  'pattern-does-not-hold': ['The pattern cannot be kept: {what}.', '{remedy}'],
  'pour-does-not-hold': ['The pour cannot be kept: {what}.', '{remedy}'],
  'body-does-not-hold': ['The body cannot be kept: {what}.', '{remedy}'],
  'solid-unsound': ['The solid of "{file}" cannot be kept: {what}.', 'Take a file that holds a closed solid.'],
  'axis-has-datum': ['Axis {axis} has its own datum already.', 'Clear that datum first.'],
  'cell-station-unknown': [
    'Row {row}, {field}: this part has no station "{given}".',
    'Add the station first, or write the name of one that is there.',
  ],
  'cell-station-ambiguous': [
    'Row {row}, {field}: "{given}" is a station of more than one axis.',
    'Write the axis before it, for example "X/{given}".',
  ],
  'cell-one-end': [
    'Row {row}: a dimension between stations needs both ends.',
    'Write a station under both "from" and "to", or a form of size (such as "diameter") under "from" alone.',
  ],
  'cell-refused': ['Row {row}, {field}: "{given}" cannot be kept.', 'Write {expected}.'],
  'cell-same-station': ['Row {row}: it runs from "{given}" to itself.', 'Write two different stations.'],
  'cell-different-axes': [
    'Row {row}: "{from}" and "{to}" do not lie along the same axis.',
    'Write two stations of one axis.',
  ],
  'reason-empty': ['No reason is given.', 'Say in a few words why this may stay as it is.'],
  'no-row-taken': [
    'None of the {rows} rows can be taken.',
    'Read the report row by row, mend the rows and import again.',
  ],
  'records-do-not-hold': ['The build to be taken does not hold together: {where}: {what}.', '{remedy}'],
} as const satisfies Readonly<Record<string, readonly [sentence: string, remedy: string]>>;

export type RefusalCode = keyof typeof refusals;

/** Why a command refused. `code` is stable; the wording is above. */
export interface Refusal {
  readonly code: RefusalCode;
  readonly data?: Readonly<Record<string, string | number>>;
}

const fill = (text: string, data: Refusal['data']): string =>
  text.replace(/\{(\w+)\}/g, (whole, name: string) => String(data?.[name] ?? whole));

/** A refusal in words: what is wrong, and what to do. */
export function refusalWords(refusal: Refusal): { readonly sentence: string; readonly remedy: string } {
  const [sentence, remedy] = refusals[refusal.code];
  return { sentence: fill(sentence, refusal.data), remedy: fill(remedy, refusal.data) };
}
