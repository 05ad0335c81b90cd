/**
 * Wording of every problem that reading a quantity, a thread or limits can have: what is wrong and what to do.
 * `{placeholders}` are filled from the problem's data.
 */
export const quantityMessages = {
  thousands:
    '“{text}” can mean two numbers, because a point, comma or space may part thousands. Write {plain} for the whole number, or a decimal point for a fraction.',
  'two-numbers': 'Two numbers stand side by side. Put an operator between them, or write a fraction such as 1-3/8.',
  'zero-denominator': 'The fraction has nought below its stroke. Write the number that is meant.',
  'fraction-improper': 'After a whole number the fraction must be less than one. Write 1-3/8, or the sum with a +.',
  'mixed-needs-unit': '“{text}” stands inside a formula without a unit. Write {text} in.',
  'ambiguous-fraction':
    'After a division sign it is not clear whether the fraction belongs together. Put brackets round it, such as (3/8 in).',
  'unknown-unit':
    '“{text}” is no unit known here. Use mm, cm, m, µm, in, thou, ft, deg, kg, g, lb, oz or °C; to multiply, write {number} * {text}.',
  'power-of-unit': 'A power directly after a unit can be read in two ways. Write ({text})^2, or multiply by 1 mm.',
  sixty: '{value} is too much: there are 60 minutes in a degree and 60 seconds in a minute. Carry it over.',
  'degrees-not-whole': 'Degrees with a decimal part cannot have minutes behind them. Write one or the other.',
  'thread-unreadable': '“{text}” cannot be read as a thread. Write it as M8, M8x1, 1/4-20 UNC or #10-32.',
  'thread-without-pitch': '“{text}” gives a diameter but no pitch. Write it as M8, M8x1, 1/4-20 or 1/4 UNC.',
  'thread-no-coarse': '“{text}” has no coarse pitch in ISO 261. Write the pitch behind it, such as M13x1.5.',
  'thread-pitch': 'The pitch of “{text}” does not fit its diameter. Write a pitch above nought and below the diameter.',
  'thread-number':
    '“{text}” is no number size: they run 0 to 6, 8, 10 and 12. Write one of those, or the size in inches.',
  'thread-number-or-inch':
    '“{text}” can be a number size or inches. Write # before a number size, or the inch mark after inches.',
  'thread-series':
    '“{text}” is not {series}: that has {listed} threads per inch. Correct one of the two, or leave out the series.',
  'limits-unreadable': '“{text}” cannot be read as a limit. Write ±0.1, or both limits as +0.2/-0.1.',
  'limits-unfinished': 'The limits stop where a number is due. Write ±0.1, or both limits as +0.2/-0.1.',
  'limits-rest': '“{text}” is left over after the limits. Write ±0.1, or two limits as +0.2/-0.1.',
  'limits-too-long': 'The limits are too long to read. Write ±0.1, or both limits as +0.2/-0.1.',
  'limits-too-large': 'The limit is too large to be meant. Write it in the unit of the value.',
  'limits-wrong-kind': 'The limit is {has}, but the value is {want}. Write the limits in the unit of the value.',
  'one-limit': 'Only one limit is written. Write both, such as {text}/0, or ±{number}.',
  'sign-missing': 'The limit {text} has no sign. Write ±{text}, or both limits with + or -.',
  'class-not-yet': 'Tolerance classes such as H7 are not read yet. Write the limits as numbers, such as +0.021/0.',
} as const;
