import type { PartId } from '../base/ids.ts';
import { ok, type Result } from '../base/result.ts';
import { describeProblem } from '../formula/messages.ts';
import { nameKey } from '../formula/name-key.ts';
import { parseWritten } from '../formula/parse-written.ts';
import { parseLimits } from '../quantity/parse-limits.ts';
import { refuseUnfitMeasure } from './body-guards.ts';
import type { CommandContext } from './command.ts';
import type { CsvRow } from './csv.ts';
import type { BuildDiff } from './diff.ts';
import { type Dimension, defaultDimension, type Source, sources } from './dimension.ts';
import { draftOf, sameRecord } from './draft.ts';
import { type ImportState, importState, type PartInHand } from './import-state.ts';
import { expectedIn, shorten, whyNotKept } from './keepable.ts';
import { limitsFromColumns, sameLimits } from './limits-columns.ts';
import { settingsOf } from './look-up.ts';
import { measureOfRow } from './measure-of-row.ts';
import type { Part } from './part.ts';
import type { Build } from './records.ts';
import { refusalWords } from './refusals.ts';
import { type RowRefusal, refuseRow } from './row-refusal.ts';
import type { Settings } from './settings.ts';
import type { Station } from './station.ts';
import { writtenOptions } from './written-options.ts';

export interface ImportOptions {
  /** Parts that are named and not there are added as castings; otherwise their rows are refused. */
  readonly addParts: boolean;
  /** Stations that are named and not there are added where the row gives the axis; otherwise such rows are refused. */
  readonly addStations: boolean;
}

export const usualImport: ImportOptions = { addParts: true, addStations: true };

/** What becomes of one row. */
export interface RowReport {
  readonly line: number;
  readonly part: string;
  readonly name: string;
  readonly outcome: 'added' | 'changed' | 'unchanged' | 'refused';
  /** Of a changed row: the fields that change. Of an added one: what is added along with it. */
  readonly what: readonly string[];
  /** Of a refused row: why, and what to do. */
  readonly reason: string;
  readonly remedy: string;
}

export interface ImportPlan {
  readonly rows: readonly RowReport[];
  /** All that the good rows change, as one diff. */
  readonly diff: BuildDiff;
}

/**
 * Works out what a table of dimensions would change, row by row. A row is taken wholly or not at all; a refused row leaves
 * nothing behind, neither a part nor a station. An empty cell leaves what is there as it is.
 */
export function planImport(
  build: Build,
  rows: readonly CsvRow[],
  options: ImportOptions,
  context: CommandContext,
): ImportPlan {
  const state = importState(build, rows);
  const settings = settingsOf(build);
  const draft = draftOf(build);
  const report = rows.map((row): RowReport => {
    const { line, part, name } = row;
    const taken = usable(build, takeRow(state, settings, row, options, context));
    if (!taken.ok) return { line, part, name, outcome: 'refused', what: [], ...taken.error };
    const { records, outcome, what } = taken.value;
    for (const record of records) {
      draft.put(record);
      state.take(record);
    }
    return { line, part, name, outcome, what, reason: '', remedy: '' };
  });
  return { rows: report, diff: draft.diff() };
}

/** A row that would take a size away from a body is not taken. */
function usable(build: Build, taken: Result<Taken, RowRefusal>): Result<Taken, RowRefusal> {
  for (const record of taken.ok ? taken.value.records : []) {
    const fits = record.kind === 'dimension' ? refuseUnfitMeasure(build, record) : ok(undefined);
    if (fits.ok) continue;
    const { sentence, remedy } = refusalWords(fits.error);
    return refuseRow(sentence, remedy);
  }
  return taken;
}

interface Taken {
  readonly outcome: 'added' | 'changed' | 'unchanged';
  readonly records: readonly (Part | Station | Dimension)[];
  readonly what: readonly string[];
}

function takeRow(
  state: ImportState,
  settings: Settings,
  row: CsvRow,
  options: ImportOptions,
  context: CommandContext,
): Result<Taken, RowRefusal> {
  const found = partOfRow(state, row, options, context);
  if (!found.ok) return found;
  const { part, isNew } = found.value;
  const existing = state.dimensionOf(part.record.id, row);
  if (!existing.ok) return existing;
  const before = existing.value;
  const measured = measureOfRow(part, before, row, options.addStations, context);
  if (!measured.ok) return measured;
  const { measure, stations } = measured.value;
  const source = sourceOf(row, before);
  if (!source.ok) return source;
  const base =
    before ?? defaultDimension(context.newId('dimension'), part.record.id, row.name, measure, part.nextOrder());
  const value = row.value === '' ? base.value : row.value;
  const sheet = row.sheet === '' ? base.sheet : row.sheet;
  const limits = limitsOf(row, { ...base, measure, value }, settings);
  if (!limits.ok) return limits;
  const dimension: Dimension = { ...base, measure, value, sheet, limits: limits.value, source: source.value };
  const added = [...(isNew ? [part.record] : []), ...stations];
  const words = added.map((record) => `${record.kind} ${record.name}`);
  if (before && sameRecord(before, dimension)) return ok({ outcome: 'unchanged', records: [], what: [] });
  const readable = checkTexts(dimension, before, settings);
  if (!readable.ok) return readable;
  for (const record of [...added, dimension]) {
    const refused = whyNotKept(record);
    if (refused) {
      const { field, given, expected } = refused.data;
      return refuseRow(`The ${field} "${given}" of the ${record.kind} cannot be kept.`, `Write ${expected}.`);
    }
  }
  const records = [...added, dimension];
  if (!before) return ok({ outcome: 'added', records, what: words });
  return ok({ outcome: 'changed', records, what: [...changedFields(before, dimension), ...words] });
}

function partOfRow(
  state: ImportState,
  row: CsvRow,
  { addParts }: ImportOptions,
  context: CommandContext,
): Result<{ part: PartInHand; isNew: boolean }, RowRefusal> {
  if (row.part === '') return refuseRow('The row names no part.', 'Write the name of a part.');
  if (row.name === '') return refuseRow('The row gives the dimension no name.', 'Write the name of the dimension.');
  const parts = state.partsNamed(row.part);
  if (parts.length > 1) {
    return refuseRow(
      `${parts.length} parts are called "${shorten(row.part)}".`,
      'Rename all but one of them in the list of parts, then import again.',
    );
  }
  const [part] = parts;
  if (part) return ok({ part, isNew: false });
  if (!addParts) {
    return refuseRow(`There is no part "${shorten(row.part)}".`, 'Add the part first, or let the import add parts.');
  }
  return ok({ part: state.newPart(context.newId('part') as PartId, row.part), isNew: true });
}

function sourceOf(row: CsvRow, before: Dimension | undefined): Result<Source, RowRefusal> {
  if (row.source === '') return ok(before?.source ?? 'drawn');
  const source = sources.find((known) => known === nameKey(row.source));
  return source ? ok(source) : refuseRow(`"${shorten(row.source)}" is no source.`, `Write ${expectedIn('source')}.`);
}

function limitsOf(row: CsvRow, dimension: Dimension, settings: Settings): Result<string, RowRefusal> {
  // Limits that no two columns can hold stand whole under "plus": as they are already, they need no reading.
  if (row.minus === '' && row.plus === dimension.limits) return ok(dimension.limits);
  const joined = limitsFromColumns(row);
  if (!joined.ok) {
    return refuseRow('Only one of "plus" and "minus" is given.', 'Write both; a limit that is not there is 0.');
  }
  if (joined.value === undefined) return ok(dimension.limits);
  const options = writtenOptions(dimension.measure, settings.lengthUnit);
  const unit = unitOf(dimension, settings);
  return ok(sameLimits(joined.value, dimension.limits, options.kind, unit) ? dimension.limits : joined.value);
}

/** The unit that bare limits are in: that of the value. */
function unitOf(dimension: Dimension, settings: Settings) {
  const written = parseWritten(dimension.value, writtenOptions(dimension.measure, settings.lengthUnit));
  return written.ok && written.value.is === 'quantity' && written.value.unit ? written.value.unit : settings.lengthUnit;
}

/** New texts must be readable; what is there already may stay as it is, readable or not. */
function checkTexts(dimension: Dimension, before: Dimension | undefined, settings: Settings): Result<true, RowRefusal> {
  const options = writtenOptions(dimension.measure, settings.lengthUnit);
  if (dimension.value !== before?.value || dimension.measure !== before.measure) {
    const written = parseWritten(dimension.value, options);
    if (!written.ok) {
      const words = describeProblem(written.error) ?? 'It cannot be read.';
      return refuseRow(`The value "${shorten(dimension.value)}" cannot be read.`, words);
    }
  }
  if (dimension.limits !== before?.limits) {
    const limits = parseLimits(dimension.limits, { kind: options.kind, unit: unitOf(dimension, settings) });
    if (!limits.ok) {
      const words = describeProblem(limits.error) ?? 'They cannot be read.';
      return refuseRow(`The limits "${shorten(dimension.limits)}" cannot be read.`, words);
    }
  }
  return ok(true);
}

function changedFields(before: Dimension, after: Dimension): readonly string[] {
  const fields = ['measure', 'value', 'limits', 'source', 'sheet'] as const;
  return fields
    .filter((field) => before[field] !== after[field])
    .map((field) => (field === 'measure' ? 'what it measures' : field));
}
