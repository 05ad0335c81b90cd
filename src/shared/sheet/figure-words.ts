import type { Dimension } from '../build/dimension.ts';
import type { ResolvedDimension } from '../drawing/drawing.ts';
import { formatQuantity } from '../quantity/format.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import type { FigureStyle } from './sheet.ts';

/** A figure as it stands on the sheet. */
export interface FigureText {
  readonly text: string;
  readonly style: FigureStyle;
  readonly underlined: boolean;
}

const styles = { drawn: 'plain', measured: 'measured', assumed: 'assumed', derived: 'derived' } as const;

/**
 * The value as written, its limits as written, and how sure it is: assumed ones carry a question mark, measured ones are
 * underlined, derived ones stand in brackets as auxiliary dimensions (ISO 129-1:2018). A formula shows what it comes to.
 *
 * @param sign what stands before the number: `⌀`, `R`, or nothing.
 */
export function figureText(dimension: Dimension, resolved: ResolvedDimension, unit: LengthUnit, sign = ''): FigureText {
  const limits = dimension.limits.trim();
  const value = `${sign}${valueWords(dimension, resolved, unit)}`;
  const whole = limits === '' ? value : `${value} ${limits}`;
  const style = styles[dimension.source];
  const text = style === 'derived' ? `(${whole})` : style === 'assumed' ? `${whole} ?` : whole;
  return { text, style, underlined: style === 'measured' };
}

/** The bare value: as written, without a unit that goes without saying, or what a formula comes to. */
function valueWords(
  dimension: Dimension,
  { isFormula, value, unit: kind }: ResolvedDimension,
  unit: LengthUnit,
): string {
  const written = dimension.value.trim();
  if (isFormula || written === '' || written.length > 24) {
    const shown = value === undefined ? Number.NaN : dimension.measure.type === 'between' ? Math.abs(value) : value;
    return formatQuantity(shown, kind, { unit, bare: kind === 'length' });
  }
  // A distance runs from one line to another: its sign says only which of them was named first.
  const unsigned = dimension.measure.type === 'between' ? written.replace(/^[-−+]\s*/, '') : written;
  const bare = unsigned.replace(unit === 'mm' ? /^([\d.]+)\s*mm$/ : /^([\d.]+)\s*in$/, '$1');
  return kind === 'angle' && /^[\d.]+$/.test(bare) ? `${bare}°` : bare;
}
