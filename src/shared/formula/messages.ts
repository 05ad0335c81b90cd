import { formatNumber } from '../quantity/format.ts';
import type { TextProblem } from '../quantity/kind.ts';
import { quantityMessages } from '../quantity/messages.ts';

/**
 * Wording of every problem that a formula can have: what is wrong and what to do. `{placeholders}` are filled from the
 * problem's data. Problems of names (`name-unknown`, …) belong to whoever ties them.
 */
export const formulaMessages = {
  'too-long': 'The formula is longer than {most} characters. Split it into dimensions of their own.',
  'too-deep': 'The brackets stand more than {most} deep. Split the formula into dimensions of their own.',
  'too-large': 'The result is too large to be meant. Check the units and the powers.',
  unfinished: 'The formula stops where a number or a name is due. Complete it.',
  unexpected: '“{text}” cannot stand here. A number, a name or an opening bracket is due.',
  'operator-expected': '“{text}” follows without an operator. Put +, -, *, / or ^ before it, or take it away.',
  'mark-apart': 'The inch mark must follow its number directly. Take the space away, or write in.',
  'unclosed-bracket': 'This bracket is not closed. Add a ) where it ends.',
  'unopened-bracket': 'This bracket was never opened. Take it away, or add a ( where it begins.',
  'unclosed-quote': 'The name in quotation marks does not end. Add the closing mark.',
  'empty-name': 'There is no name between the quotation marks. Write the name of a dimension.',
  'stray-comma':
    'A comma stands where none can: it parts the values of a function or follows whole digits. Put an operator there, or take it away.',
  'mixed-separators':
    'Values are parted by a comma here and by a semicolon there. Part them all alike, and write decimals with a point.',
  'part-missing': 'After “of” the name of a part is due. Write “{name} of” and the part.',
  'name-needs-quotes': 'A name of several words needs quotation marks. Write "{text}" if it is one name.',
  'unknown-function':
    '“{name}” is no function known here. Use sqrt, abs, min, max, sin, cos, tan, asin, acos, atan, atan2, hypot, round, floor or ceil.',
  'argument-count': '{name} has {count} values in its brackets and takes {least} to {most}. Add or take away.',
  'scale-in-formula':
    '{text} cannot stand inside a formula, because its scale has another nought. Write the temperature in °C.',
  'wrong-kind': '“{text}” is {has}, but {want} is due here. Write the value in a unit that fits.',
  'wrong-unit': 'The formula gives {has}, but {want} is due here. Check what is multiplied and divided.',
  'result-without-unit': 'The formula gives a number without a unit, but {want} is due here. Multiply it by 1 {unit}.',
  'bare-number': '{value} has no unit, but stands beside {other}. Write {value} {unit}.',
  'bare-angle': '{value} has no unit, but an angle is due here. Write {value} deg.',
  'unlike-sum': '{left} and {right} cannot be added or taken away. Give both the same kind of unit.',
  unlike: '{left} and {right} cannot be compared. Give both the same kind of unit.',
  'needs-angle': 'An angle is due here, but this is {has}. Write the angle in degrees, such as 30 deg.',
  'needs-number': 'A number without a unit is due here, but this is {has}. Divide it by a value of the same kind.',
  'exponent-with-unit':
    'An exponent must be a number without a unit, but this is {has}. Divide it by a value of the same kind.',
  'exponent-not-fixed': '{has} can only be raised to a power that is written as a number. Write the number itself.',
  'power-too-high': 'This makes a power of a unit that nothing is measured in. Check what is multiplied.',
  'step-missing': 'To round {has} a step is needed. Write a comma and the step after it, such as 1 {unit}.',
  'division-by-zero': 'This divides by nought. Check the value below the division sign.',
  'root-of-negative': 'A root of the negative value {value} is asked for. Check the values under it.',
  'outside-one': 'The value {value} must lie between -1 and 1 to belong to an angle. Check what is divided by what.',
  'no-tangent': 'At a right angle ({value}°) there is no tangent. Check the angle.',
  'no-direction': 'Both values are nought, so they give no direction. Check the two values.',
  'step-not-positive': 'The step to round to is not more than nought. Write one above nought.',
  'not-whole': 'A count must be a whole number, but this is {value}. Round it, or correct the values.',
} as const;

const all: Readonly<Record<string, string>> = { ...quantityMessages, ...formulaMessages };

/** Fills the `{placeholders}` of a sentence; numbers are shown with at most six decimals. */
export function fillMessage(template: string, data: TextProblem['data'] = {}): string {
  const filled = template.replace(/\{(\w+)\}/g, (whole, key: string) => {
    const value = data[key];
    if (value === undefined) return whole;
    return typeof value === 'number' ? formatNumber(value, 6) : value;
  });
  return filled.charAt(0).toUpperCase() + filled.slice(1);
}

/**
 * The sentence for a problem of a quantity, a thread, limits or a formula; undefined when the code belongs to another
 * room (names that are tied elsewhere).
 */
export function describeProblem(problem: TextProblem): string | undefined {
  const template = all[problem.code];
  if (template === undefined) return undefined;
  const nearest = problem.data?.nearest;
  const hint =
    problem.code === 'unknown-function' && nearest !== undefined && nearest !== '' ? ` Is ${nearest} meant?` : '';
  return fillMessage(template, problem.data) + hint;
}
