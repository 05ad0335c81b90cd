import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { all, create } from 'mathjs';
import type { PlainDimension } from './synthetic-build.ts';

/** What a peer does of the same build: values of all dimensions and places along the chains. */
export interface Peer {
  readonly name: string;
  /** Reads, orders and evaluates everything from text. @returns the dimensions' values in mm. */
  cold(dimensions: readonly PlainDimension[]): readonly number[];
  /** Begins a session of edits; each call of the result sets one number and brings all that hangs on it up to date. */
  edits(dimensions: readonly PlainDimension[]): (index: number, value: number) => void;
}

/**
 * mathjs 15: parses and compiles each formula, evaluates it over a scope. It has no graph of its own: the order is given
 * to it, and so are the dependents of an edit, which is more than it would have to find in earnest.
 */
export function mathjsPeer(): Peer {
  const math = create(all!);
  const textOf = ({ formula, operands, number }: PlainDimension): string =>
    formula === undefined ? String(number) : formula.replace(/\{(\d)\}/g, (_, i: string) => `d${operands[Number(i)]!}`);
  const run = (dimensions: readonly PlainDimension[]) => {
    const scope = new Map<string, number>();
    const codes = dimensions.map((dimension) => math.compile(textOf(dimension)));
    // Dimensions name only earlier ones, so their own order will do.
    codes.forEach((code, i) => {
      scope.set(`d${i}`, code.evaluate(scope) as number);
    });
    const places: number[] = [];
    dimensions.forEach(({ after }, i) => {
      places.push((after === undefined ? 0 : places[after]!) + scope.get(`d${i}`)!);
    });
    return { scope, codes, places };
  };
  return {
    name: 'mathjs',
    cold(dimensions) {
      const { scope } = run(dimensions);
      return dimensions.map((_, i) => scope.get(`d${i}`)!);
    },
    edits(dimensions) {
      const { scope, codes } = run(dimensions);
      const dependents: number[][] = dimensions.map(() => []);
      dimensions.forEach(({ operands }, i) => {
        for (const operand of operands) dependents[operand]!.push(i);
      });
      const follow = (i: number): void => {
        for (const dependent of dependents[i]!) {
          scope.set(`d${dependent}`, codes[dependent]!.evaluate(scope) as number);
          follow(dependent);
        }
      };
      return (index, value) => {
        codes[index] = math.compile(String(value));
        scope.set(`d${index}`, codes[index]!.evaluate(scope) as number);
        follow(index);
      };
    },
  };
}

interface Sheet {
  getSheetValues(sheet: number): readonly (readonly (number | undefined)[])[];
  setCellContents(at: { sheet: number; row: number; col: number }, contents: readonly (readonly unknown[])[]): unknown;
  destroy(): void;
}

/** HyperFormula: values in column A, places along the chains in column B. Undefined where it is not installed. */
export async function hyperformulaPeer(): Promise<Peer | undefined> {
  const folder = process.env.WAYWRIGHT_BENCH_PEERS;
  if (!folder || !existsSync(path.join(folder, 'hyperformula'))) return undefined;
  const entry = createRequire(path.join(folder, 'anchor.js')).resolve('hyperformula');
  const loaded = (await import(pathToFileURL(entry).href)) as { default: unknown };
  const found = (loaded.default as { HyperFormula?: unknown }).HyperFormula ?? loaded.default;
  const HyperFormula = found as { buildFromArray(rows: unknown[][], options: object): Sheet };
  const build = (dimensions: readonly PlainDimension[]): Sheet => {
    const rows = dimensions.map(({ formula, operands, number, after }, i) => [
      formula === undefined
        ? String(number)
        : `=${formula.replace(/\{(\d)\}/g, (_, n: string) => `A${operands[Number(n)]! + 1}`)}`,
      after === undefined ? `=A${i + 1}` : `=B${after + 1}+A${i + 1}`,
    ]);
    return HyperFormula.buildFromArray(rows, { licenseKey: 'gpl-v3', maxRows: 200_000 });
  };
  return {
    name: 'hyperformula',
    cold(dimensions) {
      const sheet = build(dimensions);
      const values = sheet.getSheetValues(0).map(([value]) => value!);
      sheet.destroy();
      return values;
    },
    edits(dimensions) {
      const sheet = build(dimensions);
      return (index, value) => {
        sheet.setCellContents({ sheet: 0, row: index, col: 0 }, [[String(value)]]);
      };
    },
  };
}
