import { ok } from '../../../shared/base/result.ts';
import { writeBuildJson } from '../../../shared/build/build-json.ts';
import { writeCsv } from '../../../shared/build/csv.ts';
import { buildOf } from '../../../shared/build/look-up.ts';
import { readBuild } from '../read-input.ts';
import { problem, type Verb } from '../verb.ts';
import { mayWrite, writeBuild, writeText } from '../write-output.ts';

export const exportVerb: Verb = {
  name: 'export',
  usage: 'FILE (--json | --csv | --wayw) [--out NEW] [--force]',
  summary: 'the build as JSON, as a table of its dimensions, or as a build file',
  help: `Writes a build in another form, to standard output or to a new file.

  --json      the whole build (resources/schema/build.schema.json)
  --csv       its dimensions, one to a line; import takes the same table back
  --wayw      a new build file, with a journal that begins here; needs --out
  --out NEW   the file to write; one that is there is left alone
  --force     write over it`,
  options: {
    json: { type: 'boolean' },
    csv: { type: 'boolean' },
    wayw: { type: 'boolean' },
    out: { type: 'string' },
    force: { type: 'boolean' },
  },
  words: [1, 1],

  async run({ values, files: [file = ''] }, surroundings) {
    const forms = (['json', 'csv', 'wayw'] as const).filter((form) => values[form] === true);
    const [form] = forms;
    if (forms.length !== 1 || !form) {
      return problem('', 'One form to export is needed.', 'Add one of --json, --csv and --wayw.');
    }
    const out = typeof values.out === 'string' ? values.out : undefined;
    if (form === 'wayw' && !out?.toLowerCase().endsWith('.wayw')) {
      return problem('', 'A build file needs a name that ends in .wayw.', 'Add --out NEW.wayw.');
    }
    const read = await readBuild(file, surroundings);
    if (!read.ok) return read;
    const text = form === 'csv' ? writeCsv(buildOf(read.value.records)) : writeBuildJson(read.value);
    if (out === undefined) return ok({ text, status: 0 });
    const force = values.force === true;
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
