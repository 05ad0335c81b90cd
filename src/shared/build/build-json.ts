import { err, ok, type Result } from '../base/result.ts';
import { BUILD_FORMAT, BUILD_VERSION, buildVersions, type IssuedState, issuedSchema } from './build-document.ts';
import { findJsonFault } from './json-place.ts';
import { recordKinds, schemaOf } from './kinds.ts';
import type { BuildRecord } from './records.ts';
import { type BuildProblem, validateBuild } from './validate-build.ts';

/** What a build's JSON form holds. */
export interface BuildContent {
  readonly records: readonly BuildRecord[];
  readonly issues: readonly IssuedState[];
}

/** One thing that is wrong with a JSON build, and where. */
export interface JsonProblem {
  readonly code: 'not-json' | 'not-a-build' | 'newer-version' | BuildProblem['code'];
  /** `line 3, column 14` of a text that is not JSON, else a JSON pointer (RFC 6901) such as `/records/4/name`; `/` for the whole. */
  readonly place: string;
  /** A sentence. */
  readonly sentence: string;
  readonly remedy: string;
}

/** Reads the JSON form of a build. Either all of it holds together, or every problem is listed. */
export function parseBuildJson(text: string): Result<BuildContent, readonly JsonProblem[]> {
  // Some editors put a byte order mark before the text; it means nothing here.
  const clean = text.startsWith('\uFEFF') ? text.slice(1) : text;
  let raw: unknown;
  try {
    raw = JSON.parse(clean);
  } catch {
    return err([notJson(clean)]);
  }
  const head = readHead(raw);
  if (!head.ok) return err([head.error]);
  const problems: JsonProblem[] = [];
  const records = readRecords(head.value.records, '/records', problems);
  const issues = head.value.issues.flatMap((issue, i) => readIssue(issue, `/issues/${i}`, problems));
  return problems.length === 0 ? ok({ records, issues }) : err(problems);
}

function notJson(text: string): JsonProblem {
  const fault = findJsonFault(text);
  const place = fault ? `line ${fault.line}, column ${fault.column}` : 'line 1, column 1';
  return {
    code: 'not-json',
    place,
    sentence: text.trim() === '' ? 'The text is empty.' : 'The text is not JSON from here on.',
    remedy: `Write ${fault?.expected ?? 'a value'} at ${place}.`,
  };
}

function readHead(raw: unknown): Result<{ records: readonly unknown[]; issues: readonly unknown[] }, JsonProblem> {
  const notABuild = (place: string, sentence: string, remedy: string) =>
    err({ code: 'not-a-build' as const, place, sentence, remedy });
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    return notABuild('/', 'This is not the JSON form of a build.', 'Take a file that was exported as JSON.');
  }
  const head = raw as Record<string, unknown>;
  if (head.format !== BUILD_FORMAT) {
    return notABuild('/format', 'This is not the JSON form of a build.', `Write "format": "${BUILD_FORMAT}".`);
  }
  const { version } = head;
  if (typeof version === 'number' && Number.isInteger(version) && version > BUILD_VERSION) {
    return err({
      code: 'newer-version',
      place: '/version',
      sentence: `The build is written in version ${version} of the format; this program reads up to ${BUILD_VERSION}.`,
      remedy: 'Open it with a newer release of the program.',
    });
  }
  if (!buildVersions.some((known) => known === version)) {
    return notABuild('/version', 'The version of the format is not known.', `Write "version": ${BUILD_VERSION}.`);
  }
  const known = ['$schema', 'format', 'version', 'records', 'issues'];
  const stray = Object.keys(head).find((key) => !known.includes(key));
  if (stray !== undefined) {
    return notABuild(
      `/${escapePointer(stray)}`,
      `A build has no field "${stray}".`,
      'Take it out, or mend its spelling.',
    );
  }
  if (!Array.isArray(head.records))
    return notABuild('/records', 'The list of records is missing.', 'Write "records": [ … ].');
  const issues = head.issues ?? [];
  if (!Array.isArray(issues))
    return notABuild('/issues', 'The issues are not a list.', 'Write "issues": [ … ], or leave it out.');
  return ok({ records: head.records, issues });
}

function readRecords(raw: readonly unknown[], place: string, problems: JsonProblem[]): readonly BuildRecord[] {
  const validated = validateBuild(raw);
  if (validated.ok) return validated.records;
  for (const { code, index, field, what, remedy } of validated.problems) {
    const at = index === undefined ? '' : `/${index}`;
    const within = field === '' ? '' : `/${field.split('/').map(escapePointer).join('/')}`;
    problems.push({
      code,
      place: `${place}${at}${within}`,
      sentence: `${what.charAt(0).toUpperCase()}${what.slice(1)}.`,
      remedy,
    });
  }
  return [];
}

function readIssue(raw: unknown, place: string, problems: JsonProblem[]): readonly IssuedState[] {
  const head = issuedSchema.omit({ records: true }).loose().safeParse(raw);
  if (!head.success) {
    for (const issue of head.error.issues) {
      problems.push({
        code: 'not-a-build',
        place: [place, ...issue.path.map((step) => escapePointer(String(step)))].join('/'),
        sentence: `The issue does not fit: ${issue.message}.`,
        remedy: 'Write what the field can hold.',
      });
    }
    return [];
  }
  const { letter, title, note, issuedAt, records } = head.data as typeof head.data & { records?: unknown };
  if (!Array.isArray(records)) {
    problems.push({
      code: 'not-a-build',
      place: `${place}/records`,
      sentence: 'The issue holds no list of records.',
      remedy: 'Write the records of the build as they were issued, or take the issue out.',
    });
    return [];
  }
  return [{ letter, title, note, issuedAt, records: [...readRecords(records, `${place}/records`, problems)] }];
}

const escapePointer = (step: string): string => step.replace(/~/g, '~0').replace(/\//g, '~1');

/** Order in files: by kind, then list order, then id, so that equal builds are equal texts. */
const inFileOrder = (a: BuildRecord, b: BuildRecord): number => {
  const byKind = recordKinds.indexOf(a.kind) - recordKinds.indexOf(b.kind);
  const order = (record: BuildRecord): number => ('order' in record ? record.order : 0);
  return byKind || order(a) - order(b) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
};

/** Writes the JSON form: one record to a line, in file order, so that two states of a build compare line by line. */
export function writeBuildJson({ records, issues }: BuildContent): string {
  const lines = (list: readonly BuildRecord[], indent: string): string =>
    list.length === 0
      ? '[]'
      : `[\n${[...list]
          .sort(inFileOrder)
          .map((record) => `${indent}  ${JSON.stringify(inSchemaOrder(record))}`)
          .join(',\n')}\n${indent}]`;
  const issued = issues.map(
    ({ letter, title, note, issuedAt, records: then }) =>
      `    {\n      "letter": ${JSON.stringify(letter)},\n      "title": ${JSON.stringify(title)},\n` +
      `      "note": ${JSON.stringify(note)},\n      "issuedAt": ${JSON.stringify(issuedAt)},\n` +
      `      "records": ${lines(then, '      ')}\n    }`,
  );
  const issueText = issued.length === 0 ? '[]' : `[\n${issued.join(',\n')}\n  ]`;
  return (
    `{\n  "format": "${BUILD_FORMAT}",\n  "version": ${BUILD_VERSION},\n` +
    `  "records": ${lines(records, '  ')},\n  "issues": ${issueText}\n}\n`
  );
}

const nested: ReadonlySet<BuildRecord['kind']> = new Set<BuildRecord['kind']>([
  'alloy',
  'body',
  'setup',
  'operation',
  'casting',
  'pattern',
  'pour',
]);

/** The same record with its fields in the order of its schema. */
function inSchemaOrder(record: BuildRecord): object {
  // Shapes, plans and figures hold fields within fields: the schema itself lays them in its order.
  if (nested.has(record.kind)) return schemaOf[record.kind].parse(record);
  if (record.kind === 'machine') {
    const figures = Object.entries(record.figures).sort(([a], [b]) => (a < b ? -1 : 1));
    return schemaOf.machine.parse({ ...record, figures: Object.fromEntries(figures) });
  }
  const source = record as unknown as Record<string, unknown>;
  const fields = Object.keys(schemaOf[record.kind].shape).map((field) => [field, source[field]] as const);
  const ordered: Record<string, unknown> = Object.fromEntries(fields);
  if (record.kind === 'dimension') {
    const { measure } = record;
    ordered.measure =
      measure.type === 'between'
        ? { type: measure.type, from: measure.from, to: measure.to }
        : { type: measure.type, form: measure.form };
  }
  return ordered;
}
