import { err, ok, type Result } from '../base/result.ts';
import { scanNumber, scanned } from '../quantity/scan-number.ts';

/** What is written as a number with a unit of its own, besides lengths, angles, masses and temperatures. */
export type Rate = 'rpm' | 'power' | 'speed' | 'minutes' | 'volume' | 'count';

/** Why a text is no such rate: what its unit is, and which ones there are. */
export interface RateProblem {
  readonly code: 'not-a-number' | 'unknown-unit' | 'not-positive';
  /** Units that are read, as one writes them, with the one that a bare number takes first. */
  readonly units: string;
}

/** By unit word in lower case without spaces: how much of the canonical unit one of it is. */
type Units = Readonly<Record<string, number>>;

// 1 hp = 550 ft·lbf/s, exactly 745.699 871 582 270 22 W; 1 metric horsepower = 75 kgf·m/s, 735.498 75 W.
const HORSEPOWER_KW = 0.745_699_871_582_270_2;
const FOOT_M = 0.3048;

const units: Readonly<Record<Rate, { readonly shown: string; readonly known: Units }>> = {
  rpm: { shown: 'rpm', known: { '': 1, rpm: 1, 'r/min': 1, 'rev/min': 1, '1/min': 1, '/min': 1, 'min-1': 1 } },
  power: { shown: 'kW, W, hp', known: { '': 1, kw: 1, w: 0.001, hp: HORSEPOWER_KW, ps: 0.735_498_75 } },
  speed: {
    shown: 'm/min, ft/min, m/s',
    known: { '': 1, 'm/min': 1, 'ft/min': FOOT_M, fpm: FOOT_M, sfm: FOOT_M, sfpm: FOOT_M, 'm/s': 60 },
  },
  minutes: {
    shown: 'min, h, s',
    known: { '': 1, min: 1, mins: 1, minutes: 1, minute: 1, h: 60, hour: 60, hours: 60, s: 1 / 60, sec: 1 / 60 },
  },
  volume: {
    shown: 'l, ml',
    known: { '': 1, l: 1, litre: 1, litres: 1, ml: 0.001, cc: 0.001, cm3: 0.001, 'cm³': 0.001 },
  },
  count: { shown: 'a number', known: { '': 1 } },
};

/**
 * Reads a rate as written: `450`, `0,75 kW`, `1/2 hp`, `80 ft/min`, `1 h 20 min`.
 *
 * @returns the value in rpm, kW, m/min, minutes, litres or as a number; undefined when nothing is written.
 */
export function readRate(text: string, rate: Rate): Result<number | undefined, RateProblem> {
  const written = text.trim();
  if (written === '') return ok(undefined);
  const { shown, known } = units[rate];
  const fail = (code: RateProblem['code']) => err({ code, units: shown });
  let total = 0;
  let rest = written;
  // Hours may be followed by minutes; everything else is one number with its unit.
  for (let pieces = 0; rest !== ''; pieces++) {
    if (pieces > 0 && (rate !== 'minutes' || pieces > 2)) return fail('unknown-unit');
    const number = readNumber(rest);
    if (number === undefined) return fail('not-a-number');
    const after = rest.slice(number.end);
    const unit = /^\s*([^\d\s][^\s]*|1?\/\s*min)?\s*/.exec(after)!;
    const word = (unit[1] ?? '').toLowerCase();
    const times = Object.hasOwn(known, word) ? known[word] : undefined;
    if (times === undefined) return fail('unknown-unit');
    total += number.value * times;
    rest = after.slice(unit[0].length);
    if (word === '' && rest !== '') return fail('not-a-number');
  }
  return total > 0 ? ok(total) : fail('not-positive');
}

/** A number, or a plain fraction such as 1/2 or 1-1/2, at the start of a text. */
function readNumber(text: string): { readonly value: number; readonly end: number } | undefined {
  const fraction = /^(?:(\d{1,4})[\s-]+)?(\d{1,4})\/(\d{1,4})(?![\d.,])/.exec(text);
  if (fraction) {
    const [whole, above, below] = [fraction[1] ?? '0', fraction[2]!, fraction[3]!].map(Number);
    return below === 0 ? undefined : { value: whole! + above! / below!, end: fraction[0].length };
  }
  const end = scanNumber(text, 0, false);
  return end <= 0 ? undefined : { value: scanned.value, end };
}
