/**
 * Advance widths of Barlow Regular, thousandths of the body, letters of one width together. Read from the font file
 * (Barlow, SIL Open Font License 1.1), which the program brings along; a sheet opened where it is missing is spaced to
 * the same lengths.
 */
const advances: readonly (readonly [thousandths: number, letters: string])[] = [
  [132, "'"],
  [140, '‘’'],
  [166, '|'],
  [195, '`'],
  [200, ' '],
  [210, '·'],
  [230, 'l'],
  [245, 'j'],
  [255, 'i'],
  [259, 'I'],
  [261, '()'],
  [263, '"'],
  [264, ','],
  [267, '“”'],
  [278, '.'],
  [302, '{}'],
  [311, ';'],
  [319, '!'],
  [322, '³'],
  [324, '″'],
  [326, '²'],
  [339, ':'],
  [350, '1'],
  [356, 'f'],
  [364, 'rt'],
  [380, '[]'],
  [381, '°'],
  [394, '-'],
  [397, '*'],
  [400, '/\\'],
  [422, '×'],
  [445, 'z'],
  [450, '^–'],
  [461, '?y'],
  [473, '7'],
  [475, 'v'],
  [477, 'x'],
  [481, 's'],
  [484, '_'],
  [500, '+<=>±−'],
  [501, 'k~'],
  [510, 'ä'],
  [511, 'a'],
  [514, '5'],
  [515, '36'],
  [520, 'c'],
  [521, '89'],
  [528, 'ø'],
  [533, 'eé'],
  [535, 'g'],
  [536, '2uö'],
  [539, 'hnü'],
  [545, 'o'],
  [546, 'bd'],
  [549, 'Z'],
  [551, '4'],
  [552, 'pq'],
  [557, 'ß'],
  [559, '$'],
  [565, '0'],
  [567, 'Y'],
  [568, 'FL'],
  [569, 'T'],
  [576, 'Q'],
  [577, 'J'],
  [584, 'S'],
  [589, 'VX'],
  [592, 'P'],
  [600, '′'],
  [605, 'E'],
  [607, 'AC'],
  [611, 'K'],
  [612, 'R'],
  [613, 'G'],
  [618, 'D'],
  [622, 'OØ'],
  [627, 'B'],
  [648, 'U'],
  [654, 'H'],
  [658, '&'],
  [659, '#'],
  [676, 'N'],
  [685, '—'],
  [715, 'M'],
  [721, 'w'],
  [795, '…'],
  [827, '@m'],
  [848, '%'],
  [878, 'W'],
];

/** Height of its capitals, thousandths of the body. */
const CAPITALS = 700;
/** A letter that the list lacks: on the wide side. */
const UNLISTED = 850;
/** Semibold (weight 600) is 2 % wider in the mean of letters and figures. */
const BOLD = 1.02;

const byLetter = new Map(
  advances.flatMap(([width, letters]) => [...letters].map((letter) => [letter, width] as const)),
);

/** Length of a text, in heights of its capitals. */
export function textLength(text: string, bold: boolean): number {
  let sum = 0;
  for (const letter of text) sum += byLetter.get(letter) ?? UNLISTED;
  return (sum * (bold ? BOLD : 1)) / CAPITALS;
}
