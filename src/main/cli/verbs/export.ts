import { ok, type Result } from '../../../shared/base/result.ts';
import { writeBuildJson } from '../../../shared/build/build-json.ts';
import { writeCsv } from '../../../shared/build/csv.ts';
import { buildOf } from '../../../shared/build/look-up.ts';
import type { Build } from '../../../shared/build/records.ts';
import { findPart } from '../find-named.ts';
import { readBuild } from '../read-input.ts';
import { type CallProblem, type Outcome, problem, type ReadCall, type Verb } from '../verb.ts';
import { mayWrite, writeBuild, writeText } from '../write-output.ts';
import { sheetFile, sheetOptions } from './export-sheet.ts';
import { solidFile, type WrittenForm, writtenForms } from './export-solid.ts';

export const exportVerb: Verb = {
  name: 'export',
  usage: 'FILE [PART] --FORM [--out NEW] [options]',
  summary: 'the build as JSON, CSV or build file, or the solid or sheet of a part',
  help: `Writes a build in another form, to standard output or to a new file; or the
solid of one part, in mm, to a new file, or its sheet. Exit status: 1 some of
the part is not placed and so not in the solid or the views, otherwise 0.

  --json      the whole build (resources/schema/build.schema.json)
  --csv       its dimensions, one to a line; import takes the same table back
  --wayw      a new build file, with a journal that begins here; needs --out
  --stl       the solid of PART as triangles, binary; needs --out
  --3mf       the same with its unit and its name
  --svg       the sheet of PART: three views, full size in mm
  --as-cast   the solid as it comes from the mould, before machining
  --third     views in third angle instead of first
  --paper A3  A4 to A0; otherwise the smallest on which all finds its place
  --section Y/middle   one view cut through that station of the part
  --from end  the cut looked at from the end of its axis, not from the start
  --out NEW   the file to write; one that is there is left alone
  --force     write over it`,
  options: {
    json: { type: 'boolean' },
    csv: { type: 'boolean' },
    wayw: { type: 'boolean' },
    stl: { type: 'boolean' },
    '3mf': { type: 'boolean' },
    'as-cast': { type: 'boolean' },
    ...sheetOptions,
    out: { type: 'string' },
    force: { type: 'boolean' },
  },
  words: [1, 2],

  async run({ values, files: [file = '', name] }, surroundings) {
    const forms = (['json', 'csv', 'wayw', 'svg', ...writtenForms] as const).filter((form) => values[form] === true);
    const [form] = forms;
    if (forms.length !== 1 || !form) {
      return problem('', 'One form to export is needed.', 'Add one of --json, --csv, --wayw, --svg, --stl and --3mf.');
    }
    const out = typeof values.out === 'string' ? values.out : undefined;
    const force = values.force === true;
    if (form === 'stl' || form === '3mf') {
      if (name === undefined) {
        return problem('', `With --${form} one part is written, and none is named.`, 'Put its name behind the file.');
      }
      if (out === undefined) return problem('', 'A solid is no text and needs a file.', `Add --out NEW.${form}.`);
      const read = await readBuild(file, surroundings);
      return read.ok ? exportSolid(buildOf(read.value.records), name, form, out, force, values) : read;
    }
    if (form === 'svg') {
      if (name === undefined)
        return problem('', 'With --svg one part is drawn, and none is named.', 'Put its name behind the file.');
      const read = await readBuild(file, surroundings);
      return read.ok ? exportSheet(buildOf(read.value.records), name, out, force, values) : read;
    }
    if (name !== undefined) {
      return problem(
        name,
        `With --${form} the whole build is written, and no part is chosen.`,
        'Leave this word away.',
      );
    }
    if (form === 'wayw' && !out?.toLowerCase().endsWith('.wayw')) {
      return problem('', 'A build file needs a name that ends in .wayw.', 'Add --out NEW.wayw.');
    }
    const read = await readBuild(file, surroundings);
    if (!read.ok) return read;
    const text = form === 'csv' ? writeCsv(buildOf(read.value.records)) : writeBuildJson(read.value);
    if (out === undefined) return ok({ text, status: 0 });
    const free = await mayWrite(out, force);
    if (!free.ok) return free;
    const written = form === 'wayw' ? await writeBuild(out, read.value, force) : await writeText(out, text);
    if (!written.ok) return written;
    // The named states of the drawings go along in JSON; a build file begins its own.
    const left = form === 'wayw' && read.value.issues.length > 0;
    const remarks = left ? [`${read.value.issues.length} issued states of the drawings were not taken along.`] : [];
    return ok({ text: `Written to ${out}.\n`, status: 0, remarks });
  },
};

async function exportSolid(
  build: Build,
  name: string,
  form: WrittenForm,
  out: string,
  force: boolean,
  values: ReadCall['values'],
): Promise<Result<Outcome, CallProblem>> {
  const part = findPart(build, name);
  if (!part.ok) return part;
  const free = await mayWrite(out, force);
  if (!free.ok) return free;
  const solid = await solidFile(build, part.value, values['as-cast'] === true ? 'as cast' : 'finished', form);
  if (!solid.ok) return solid;
  const written = await writeText(out, solid.value.bytes);
  if (!written.ok) return written;
  const { missing } = solid.value;
  const remarks = missing.length > 0 ? [`Not in it, because they are not placed: ${missing.join(', ')}.`] : [];
  return ok({ text: `Written to ${out}.\n`, status: missing.length > 0 ? 1 : 0, remarks });
}

async function exportSheet(
  build: Build,
  name: string,
  out: string | undefined,
  force: boolean,
  values: ReadCall['values'],
): Promise<Result<Outcome, CallProblem>> {
  const part = findPart(build, name);
  if (!part.ok) return part;
  const free = out === undefined ? ok(true) : await mayWrite(out, force);
  if (!free.ok) return free;
  const sheet = await sheetFile(build, part.value, values);
  if (!sheet.ok) return sheet;
  const { text, unplaced, isWhole } = sheet.value;
  const status = isWhole ? 0 : 1;
  const remarks = unplaced.length > 0 ? ['Not in the views:', ...unplaced] : [];
  if (out === undefined) return ok({ text, status, remarks });
  const written = await writeText(out, text);
  return written.ok ? ok({ text: `Written to ${out}.\n`, status, remarks }) : written;
}
