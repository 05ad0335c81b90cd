import fc from 'fast-check';
import { all, create } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { link } from '../../src/shared/formula/link.ts';
import { editDistance, nearestName } from '../../src/shared/formula/nearest-name.ts';
import { parseFormula } from '../../src/shared/formula/parse-formula.ts';
import { parseWritten } from '../../src/shared/formula/parse-written.ts';
import { renameReferences } from '../../src/shared/formula/rename.ts';
import { problemAt, runProgram } from '../../src/shared/formula/run.ts';
import type { Kind } from '../../src/shared/quantity/kind.ts';

// Predictable: NaN where it would go on into complex numbers.
const math = create(all!, { predictable: true });
const names = ['a', 'b', 'c'] as const;

type Scope = Readonly<Record<string, number>>;

/** A random sum: its text, fully or sparsely bracketed, and a walk over its tree. */
interface Sum {
  readonly text: string;
  readonly value: (scope: Scope) => number;
  readonly binding: number;
}

const atom: fc.Arbitrary<Sum> = fc.oneof(
  fc.integer({ min: 0, max: 9999 }).map((n) => ({ text: String(n / 100), value: () => n / 100, binding: 9 })),
  fc.constantFrom(...names).map((name): Sum => ({ text: name, value: (scope) => scope[name]!, binding: 9 })),
  fc.constant<Sum>({ text: 'pi', value: () => Math.PI, binding: 9 }),
);

const bracketed = ({ text, binding }: Sum, least: number): string => (binding < least ? `(${text})` : text);

const binary: readonly (readonly [sign: string, binding: number, of: (a: number, b: number) => number])[] = [
  ['+', 1, (a, b) => a + b],
  ['-', 1, (a, b) => a - b],
  ['*', 2, (a, b) => a * b],
  ['/', 2, (a, b) => a / b],
];

const unary: readonly (readonly [name: string, of: (a: number) => number])[] = [
  ['sqrt', Math.sqrt],
  ['abs', Math.abs],
];

const many: readonly (readonly [name: string, of: (...values: readonly number[]) => number])[] = [
  ['min', Math.min],
  ['max', Math.max],
  // Two by two, as the program joins them: all at once may differ in the last bit.
  ['hypot', (first, ...rest) => rest.reduce((a, b) => Math.hypot(a, b), Math.abs(first!))],
];

const { sum } = fc.letrec<{ sum: Sum }>((tie) => ({
  sum: fc.oneof(
    { maxDepth: 6, depthSize: 'medium' },
    atom,
    fc
      .tuple(fc.constantFrom(...binary), tie('sum'), tie('sum'), fc.constantFrom('', ' '))
      .map(([[sign, binding, of], a, b, gap]) => ({
        // The right side of a minus or a division needs brackets where it binds no tighter.
        text: `${bracketed(a, binding)}${gap}${sign}${gap}${bracketed(b, binding + 1)}`,
        value: (scope: Scope) => of(a.value(scope), b.value(scope)),
        binding,
      })),
    tie('sum').map((a) => ({ text: `-${bracketed(a, 3)}`, value: (scope: Scope) => -a.value(scope), binding: 1 })),
    fc.tuple(tie('sum'), fc.integer({ min: -3, max: 3 })).map(([a, n]) => ({
      text: `${bracketed(a, 9)}^${n}`,
      value: (scope: Scope) => a.value(scope) ** n,
      binding: 4,
    })),
    fc.tuple(fc.constantFrom(...unary), tie('sum')).map(([[name, of], a]) => ({
      text: `${name}(${a.text})`,
      value: (scope: Scope) => of(a.value(scope)),
      binding: 9,
    })),
    fc
      .tuple(fc.constantFrom(...many), fc.array(tie('sum'), { minLength: 1, maxLength: 4 }))
      .map(([[name, of], list]) => ({
        text: `${name}(${list.map(({ text }) => text).join(', ')})`,
        value: (scope: Scope) => of(...list.map((each) => each.value(scope))),
        binding: 9,
      })),
  ),
}));

const scopes = fc.record({ a: smallNumber(), b: smallNumber(), c: smallNumber() });

function smallNumber() {
  return fc.integer({ min: -5000, max: 5000 }).map((n) => n / 50);
}

function evaluate(text: string, scope: Scope): number | string {
  const formula = parseFormula(text, 'mm');
  if (!formula.ok) return formula.error.code;
  const { references } = formula.value;
  const program = link(
    formula.value,
    references.map(() => 'number' as const),
    { want: 'number' },
  );
  if (!program.ok) return program.error.code;
  const operands = Float64Array.from(references.map(({ name }) => scope[name]!));
  const value = runProgram(program.value, operands);
  const problem = problemAt(program.value, operands);
  expect(Number.isNaN(value)).toBe(problem !== undefined);
  return problem === undefined ? value : problem.code;
}

/** Near in the sense of float64: two ways round the same sum may differ in the last figures. */
function expectNear(value: number | string, oracle: number): void {
  // Cancelled values of the order of the noise of larger ones are left to the exact comparison below.
  if (typeof value === 'string') return;
  expect(Math.abs(value - oracle)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(oracle)));
}

describe('the value of a formula', () => {
  test('is that of a walk over its tree, to the bit', () => {
    fc.assert(
      fc.property(sum, scopes, ({ text, value }, scope) => {
        const oracle = value(scope);
        const found = evaluate(text, scope);
        if (typeof found === 'number') expect(found).toBe(oracle + 0);
        // A problem is told exactly when the sum, or a step of it, has no usable value.
        else if (Number.isFinite(oracle) && Math.abs(oracle) <= 1e12) {
          expect(['division-by-zero', 'too-large', 'root-of-negative']).toContain(found);
        } else expect(found).toMatch(/division-by-zero|too-large|root-of-negative/);
      }),
      { numRuns: 3000 },
    );
  });

  test('is that of a general mathematics library', () => {
    fc.assert(
      fc.property(sum, scopes, ({ text }, scope) => {
        const oracle: unknown = math.evaluate(text, { ...scope });
        const found = evaluate(text, scope);
        // The library goes on through infinities where a workshop sum has no answer.
        if (typeof oracle === 'number' && Number.isFinite(oracle) && Math.abs(oracle) <= 1e12)
          expectNear(found, oracle);
        else expect(typeof found).toBe('string');
      }),
      { numRuns: 1500 },
    );
  });

  test.each(['sin', 'cos', 'tan'] as const)('%s of an angle in degrees is that of the library', (name) => {
    fc.assert(
      fc.property(fc.double({ min: -1000, max: 1000, noNaN: true }), (angle) => {
        const degrees = Number(angle.toFixed(6));
        fc.pre(Math.abs(Math.cos((degrees * Math.PI) / 180)) > 1e-6);
        const oracle: unknown = math.evaluate(`${name}(x deg)`, { x: 1 }) && math[name](math.unit(degrees, 'deg'));
        const found = evaluate(`${name}(${degrees} deg)`, {});
        expect(typeof found).toBe('number');
        const scale = Math.max(1, Number(oracle) ** 2);
        expect(Math.abs(Number(found) - Number(oracle))).toBeLessThan(1e-12 * scale);
      }),
    );
  });

  test('the sign of a literal and of a sum agree', () => {
    fc.assert(
      fc.property(scopes, (scope) => {
        expect(evaluate('-(a+b)', scope)).toBe(evaluate('-a-b', scope));
        expect(evaluate('a-(b-c)', scope)).toBeCloseTo(Number(evaluate('a-b+c', scope)), 9);
      }),
    );
  });
});

const lengths = fc.constantFrom(
  'bore',
  '"wall x" of base',
  '3 mm',
  '1/4 in',
  '1-3/8"',
  '12,5 mm',
  '2',
  '30 deg',
  'pi',
  'teeth',
);

test('units are checked as a calculation with dimensions would', () => {
  // The oracle counts powers of length by hand, in the same order of the operations.
  const powers: Readonly<Record<string, number>> = { '2': 0, pi: 0, teeth: 0 };
  fc.assert(
    fc.property(fc.array(fc.tuple(lengths, fc.constantFrom('*', '/')), { minLength: 1, maxLength: 8 }), (steps) => {
      fc.pre(steps.every(([text]) => text !== '30 deg'));
      // A fraction after a division sign is refused on purpose, and 1-3/8 behind a sign is two operands.
      fc.pre(
        steps.every(([text], i) => i === 0 || (text !== '1-3/8"' && (steps[i - 1]![1] !== '/' || text !== '1/4 in'))),
      );
      const text = steps.map(([operand, sign], i) => operand + (i < steps.length - 1 ? ` ${sign} ` : '')).join('');
      const power = steps.reduce((sumOf, [operand], i) => {
        const own = powers[operand] ?? 1;
        return i > 0 && steps[i - 1]![1] === '/' ? sumOf - own : sumOf + own;
      }, 0);
      const formula = parseFormula(text, 'mm');
      if (!formula.ok) throw new Error(`${text}: ${formula.error.code}`);
      const kinds = formula.value.references.map(({ name }): Kind => (name === 'teeth' ? 'number' : 'length'));
      const isBare = steps.every(([operand]) => operand === '2' || operand === 'pi');
      expect(link(formula.value, kinds, { want: 'length' }).ok, text).toBe(power === 1 || isBare);
      expect(link(formula.value, kinds, { want: 'number' }).ok, text).toBe(power === 0);
    }),
  );
});

const scraps = fc.constantFrom(
  ...[
    'bore',
    '"wall x"',
    "'y",
    ' of ',
    'base',
    '(',
    ')',
    '+',
    '-',
    '*',
    '/',
    '^',
    ',',
    ';',
    ' ',
    '1',
    '2.5',
    '12,5',
    '1,000',
  ],
  ...[
    '3/8',
    '1-3/8',
    'in',
    '"',
    "'",
    '°',
    'mm',
    'deg',
    'sin(',
    'max(',
    'round(',
    'pi',
    'sqrt',
    '½',
    '±',
    '\u{1f529}',
    'é',
    '_',
  ],
);
const scrap = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.array(scraps, { maxLength: 30 }).map((parts) => parts.join('')),
);
const kind = fc.constantFrom<Kind>('length', 'angle', 'mass', 'temperature', 'number');

test('no text makes the reader fail otherwise than by a problem in its place', () => {
  fc.assert(
    fc.property(
      scrap,
      kind,
      fc.boolean(),
      fc.array(fc.double(), { minLength: 30, maxLength: 30 }),
      (text, want, flag, values) => {
        const written = parseWritten(text, { kind: want, lengthUnit: flag ? 'in' : 'mm', thread: flag, whole: !flag });
        if (!written.ok) {
          expectPlace(written.error, text);
          return;
        }
        if (written.value.is === 'quantity') expect(Number.isFinite(written.value.value)).toBe(true);
        if (written.value.is === 'empty') expect(text.trim()).toBe('');
        if (written.value.is !== 'formula') return;
        const { formula } = written.value;
        for (const reference of formula.references) expectPlace(reference, text);
        const program = link(
          formula,
          formula.references.map(() => want),
          { want, whole: !flag },
        );
        if (!program.ok) {
          expectPlace(program.error, text);
          return;
        }
        const operands = Float64Array.from(values);
        const problem = problemAt(program.value, operands);
        expect(Number.isNaN(runProgram(program.value, operands))).toBe(problem !== undefined);
        if (problem) expectPlace(problem, text);
      },
    ),
    { numRuns: 5000 },
  );
});

function expectPlace({ start, end }: { readonly start: number; readonly end: number }, text: string): void {
  expect(start).toBeGreaterThanOrEqual(0);
  expect(end).toBeGreaterThan(start);
  expect(end).toBeLessThanOrEqual(text.length);
}

const anyName = fc
  .string({
    minLength: 1,
    maxLength: 12,
    unit: fc.constantFrom('a', 'B', 'é', '_', '1', ' ', '-', '"', "'", '“', '+', '(', '.'),
  })
  .map((name) => name.trim())
  .filter((name) => name !== '');

test('renaming there and back gives the same references, and the text back where names could stand bare', () => {
  fc.assert(
    fc.property(sum, anyName, anyName, ({ text }, name, part) => {
      const options = { kind: 'number', lengthUnit: 'mm' } as const;
      const there = renameReferences(text, options, (reference) =>
        reference.name === 'a' ? { name, part } : undefined,
      );
      const before = referencesOf(text).map(([aName, aPart]) => (aName === 'a' ? [name, part] : [aName, aPart]));
      expect(referencesOf(there)).toEqual(before);
      const back = renameReferences(there, options, (reference) =>
        reference.name === name && reference.part === part ? { name: 'a', part: undefined } : undefined,
      );
      expect(back.replaceAll('"a"', 'a')).toBe(text);
    }),
    { numRuns: 1000 },
  );
});

function referencesOf(text: string): (string | undefined)[][] {
  const formula = parseFormula(text, 'mm');
  if (!formula.ok) throw new Error(`${text}: ${formula.error.code}`);
  return formula.value.references.map(({ name, part }) => [name, part]);
}

/** The plain table of distances, without bands or bounds. */
function plainDistance(a: string, b: string): number {
  const table = Array.from({ length: a.length + 1 }, (_, i) =>
    Array.from({ length: b.length + 1 }, (_, j) => (i === 0 ? j : i)),
  );
  for (let i = 1; i <= a.length; i++) {
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(table[i - 1]![j]! + 1, table[i]![j - 1]! + 1, table[i - 1]![j - 1]! + cost);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, table[i - 2]![j - 2]! + 1);
      table[i]![j] = least;
    }
  }
  return table[a.length]![b.length]!;
}

const word = fc.string({ maxLength: 10, unit: fc.constantFrom('a', 'b', 'c') });

test('the bounded distance of two names is that of the whole table', () => {
  fc.assert(
    fc.property(word, word, fc.integer({ min: 1, max: 4 }), (a, b, most) => {
      expect(editDistance(a, b, most)).toBe(Math.min(plainDistance(a, b), most + 1));
    }),
    { numRuns: 3000 },
  );
});

test('the nearest name does not hang on the order of the list', () => {
  fc.assert(
    fc.property(word, fc.array(word, { maxLength: 12 }), (name, list) => {
      expect(nearestName(name, list)).toBe(nearestName(name, [...list].reverse()));
    }),
  );
});
