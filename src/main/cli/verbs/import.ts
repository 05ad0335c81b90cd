import { idSource } from '../../../shared/base/ids.ts';
import { ok, type Result } from '../../../shared/base/result.ts';
import { type BuildContent, parseBuildJson } from '../../../shared/build/build-json.ts';
import type { CommandContext, Step } from '../../../shared/build/command.ts';
import { runCommand } from '../../../shared/build/commands/registry.ts';
import { readCsv } from '../../../shared/build/csv.ts';
import { apply, emptyDiff, isEmpty } from '../../../shared/build/diff.ts';
import { planImport } from '../../../shared/build/import-rows.ts';
import { buildOf } from '../../../shared/build/look-up.ts';
import type { Build } from '../../../shared/build/records.ts';
import { refusalWords } from '../../../shared/build/refusals.ts';
import { formatNumber } from '../../../shared/quantity/format.ts';
import { indented } from '../layout.ts';
import type { ImportOutput } from '../output/import-output.ts';
import { readBuild, readText, STDIN } from '../read-input.ts';
import { editFile } from '../save-step.ts';
import { type CallProblem, problem, type ReadCall, type Surroundings, type Verb } from '../verb.ts';
import { mayWrite, writeBuild } from '../write-output.ts';
import { isSolidName, planSolid, type SolidReport } from './import-solid.ts';

type Rows = Pick<ImportOutput, 'rows' | 'ignoredColumns' | 'solid'>;

export const importVerb: Verb = {
  name: 'import',
  usage: 'FILE SOURCE [--into NEW] [options]',
  summary: 'take in a table of dimensions, a solid (STEP, STL …) or a build',
  help: `Takes the rows of a table into a build, as one step that can be undone, and
reports row by row what was taken and what was refused and why. A row is taken
wholly or not at all; an empty cell leaves what is there. Columns, in any order:

  part, name       the dimension
  from, to, axis   two stations and X, Y or Z; or, for a size, only under axis:
                   diameter, radius, length, angle, thread, count, mass,
                   temperature
  value            as on the drawing: 62, 1-3/8", 2 * wall
  plus, minus      limits
  source           drawn, measured, assumed or derived
  sheet

A SOURCE in JSON form is taken in place of the whole build. Either file may be -
for standard input (a build on standard input needs --into).

A SOURCE named .step, .stp, .stl, .obj or .3mf is a solid, and becomes a body of
one part. It must be closed; small gaps are mended.
Exit status: 0 every row was taken, 1 some were refused.

  --part PART        the part whose body the solid becomes
  --unit UNIT        mm, cm, m, in or ft, where the file does not say it
  --at X,Y,Z         the stations at which the file's origin stands; the datums,
                     where none is named
  --turn +X,+Y,+Z    which axis of the part each axis of the file becomes
  --name NAME        of the body; that of the file if none is given
  --take             the body takes away instead of adding
  --finish FINISH    as cast, cored or machined
  --sure             take a solid of a size that looks wrong for its part

  --into NEW         leave FILE as it is, write to NEW (.wayw, or JSON)
  --force            write over NEW if it is there
  --dry-run          report only, write nothing
  --all-or-nothing   write nothing unless every row can be taken
  --known-only       add no parts or stations; refuse rows that need new ones
  --json             the report as JSON
                     (resources/schema/import-output.schema.json)`,
  options: {
    into: { type: 'string' },
    force: { type: 'boolean' },
    'dry-run': { type: 'boolean' },
    'all-or-nothing': { type: 'boolean' },
    'known-only': { type: 'boolean' },
    part: { type: 'string' },
    unit: { type: 'string' },
    at: { type: 'string' },
    turn: { type: 'string' },
    name: { type: 'string' },
    take: { type: 'boolean' },
    finish: { type: 'string' },
    sure: { type: 'boolean' },
    json: { type: 'boolean' },
  },
  words: [2, 2],

  async run({ values, files: [file = '', source = ''] }, surroundings) {
    const into = typeof values.into === 'string' ? values.into : undefined;
    if (file === STDIN && source === STDIN) {
      return problem('', 'Both files cannot come from standard input.', 'Name one of them.');
    }
    if (file === STDIN && into === undefined && !values['dry-run']) {
      return problem('', 'A build from standard input has no file to write to.', 'Add --into NEW, or --dry-run.');
    }
    const read = await readBuild(file, surroundings);
    if (!read.ok) return read;
    if (into !== undefined && !values['dry-run']) {
      const free = await mayWrite(into, values.force === true);
      if (!free.ok) return free;
    }
    const planned = await plan(read.value, source, values, surroundings);
    if (!planned.ok) return planned;
    const { step, after, report } = planned.value;
    const counts = countsOf(report);
    const held = values['dry-run'] === true || (values['all-or-nothing'] === true && counts.refused > 0);
    let written: string | undefined;
    if (!held && (into !== undefined || !isEmpty(step.diff))) {
      const saved =
        into === undefined
          ? await editFile(file, read.value, after, step)
          : await writeBuild(into, after, values.force === true);
      if (!saved.ok) return saved;
      written = into ?? file;
    }
    const output: ImportOutput = {
      format: 'waywright-import',
      version: 1,
      ...(written === undefined ? {} : { written }),
      counts,
      ...report,
    };
    const status = counts.refused > 0 ? 1 : 0;
    if (values.json) return ok({ text: `${JSON.stringify(output, undefined, 2)}\n`, status });
    return ok({ text: words(output, step.label, held), status });
  },
};

interface Planned {
  readonly step: Step;
  readonly after: BuildContent;
  readonly report: Rows;
}

async function plan(
  content: BuildContent,
  source: string,
  values: ReadCall['values'],
  surroundings: Surroundings,
): Promise<Result<Planned, CallProblem>> {
  if (isSolidName(source) || values.part !== undefined) {
    const planned = await planSolid(content, source, values, surroundings);
    if (!planned.ok) return planned;
    const { step, after, report } = planned.value;
    return ok({ step, after, report: { rows: [], ignoredColumns: [], solid: jsonOf(report) } });
  }
  const text = await readText(source, surroundings);
  if (!text.ok) return text;
  const build = buildOf(content.records);
  const context: CommandContext = { newId: idSource(surroundings.random32), now: surroundings.now() };
  return /^\uFEFF?\s*[{[]/.test(text.value)
    ? planReplacing(build, content, source, text.value, context)
    : planRows(build, content, source, text.value, values['known-only'] === true, context);
}

const jsonOf = (report: SolidReport): NonNullable<ImportOutput['solid']> => ({
  ...report,
  sizeMm: [...report.sizeMm],
  remarks: [...report.remarks],
});

function planRows(
  build: Build,
  content: BuildContent,
  source: string,
  text: string,
  knownOnly: boolean,
  context: CommandContext,
): Result<Planned, CallProblem> {
  const table = readCsv(text);
  if (!table.ok) return problem(`${source}, line ${table.error.line}`, table.error.sentence, table.error.remedy);
  const options = { addParts: !knownOnly, addStations: !knownOnly };
  const { rows, diff } = planImport(build, table.value.rows, options, context);
  const taken = rows.filter(({ outcome }) => outcome === 'added' || outcome === 'changed').length;
  const step: Step = { diff, label: `import ${taken} dimension${taken === 1 ? '' : 's'}` };
  const report: Rows = {
    rows: rows.map((row) => ({ ...row, what: [...row.what] })),
    ignoredColumns: [...table.value.ignored],
  };
  return ok({ step, after: { ...content, records: [...apply(build, diff).values()] }, report });
}

function planReplacing(
  build: Build,
  content: BuildContent,
  source: string,
  text: string,
  context: CommandContext,
): Result<Planned, CallProblem> {
  const parsed = parseBuildJson(text);
  if (!parsed.ok) {
    const [first] = parsed.error;
    return problem(`${source}, ${first?.place ?? '/'}`, first?.sentence ?? '', first?.remedy ?? '');
  }
  const run = runCommand(build, 'build-replace', { records: parsed.value.records }, context);
  if (!run.ok) {
    const { sentence, remedy } = refusalWords(run.error);
    return problem(source, sentence, remedy);
  }
  const step = isEmpty(run.value.diff) ? { ...run.value, diff: emptyDiff } : run.value;
  const after = { ...content, records: [...apply(build, step.diff).values()] };
  return ok({ step, after, report: { rows: [], ignoredColumns: [] } });
}

function countsOf({ rows }: Rows): ImportOutput['counts'] {
  const count = (outcome: ImportOutput['rows'][number]['outcome']) =>
    rows.filter((row) => row.outcome === outcome).length;
  return { added: count('added'), changed: count('changed'), unchanged: count('unchanged'), refused: count('refused') };
}

function words({ counts, rows, written, ignoredColumns, solid }: ImportOutput, label: string, held: boolean): string {
  const { added, changed, unchanged, refused } = counts;
  const lines =
    rows.length === 0 ? [] : [`${added} added, ${changed} changed, ${unchanged} unchanged, ${refused} refused`, ''];
  for (const { line, part, name, outcome, what, reason, remedy } of rows) {
    if (outcome === 'unchanged') continue;
    const details = what.length > 0 ? ` (${what.join(', ')})` : '';
    lines.push(indented(`line ${line}: ${name || 'a row'} of ${part || 'no part'}: ${outcome}${details}`, 2));
    if (outcome === 'refused') lines.push(indented(`${reason} ${remedy}`, 4));
  }
  if (solid !== undefined) lines.push(...solidWords(solid));
  if (ignoredColumns.length > 0)
    lines.push('', indented(`Columns that mean nothing here: ${ignoredColumns.join(', ')}.`, 0));
  if (lines.length > 0 && lines.at(-1) !== '') lines.push('');
  if (held) lines.push('Nothing was written.');
  else lines.push(written === undefined ? 'There was nothing to change.' : `Written to ${written}: ${label}.`);
  return `${lines.join('\n')}\n`;
}

function solidWords({ part, name, sizeMm, volumeMm3, triangles, remarks }: NonNullable<ImportOutput['solid']>) {
  const size = sizeMm.map((value) => formatNumber(value, 3)).join(' × ');
  const volume = `${formatNumber(volumeMm3 / 1000, 3)} cm³`;
  return [
    indented(`${name} of ${part}: ${size} mm, ${volume}, ${triangles} triangles`, 2),
    ...remarks.map((remark) => indented(remark, 4)),
  ];
}
