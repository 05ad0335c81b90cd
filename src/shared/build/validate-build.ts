import type { Body } from './body.ts';
import { schemaOf } from './kinds.ts';
import { meshFault } from './mesh-code.ts';
import type { PlanFault } from './plan-fault.ts';
import { isPlan } from './plan-uses.ts';
import type { BuildRecord, RecordId, RecordOf } from './records.ts';
import { SETTINGS_ID } from './settings.ts';
import type { Solid } from './solid.ts';
import { type BodyFault, bodyFaults } from './validate-body.ts';
import { planFaults } from './validate-plan.ts';

/** One way in which records do not make a build. */
export interface BuildProblem {
  readonly code:
    | 'kind-unknown'
    | 'field'
    | 'id-twice'
    | 'settings-missing'
    | 'part-missing'
    | 'station-missing'
    | 'same-station'
    | 'station-of-other-part'
    | 'station-of-other-axis'
    | 'two-datums'
    | 'two-castings'
    | 'mesh-unsound'
    | BodyFault['code']
    | PlanFault['code'];
  /** Place of the record in the list handed in; undefined where it concerns the list as a whole. */
  readonly index: number | undefined;
  /** Field within the record, parts joined by `/`; empty for the record as a whole. */
  readonly field: string;
  /** What is wrong, a clause without a full stop. */
  readonly what: string;
  /** What to do, one sentence. */
  readonly remedy: string;
}

export type Validated =
  | { readonly ok: true; readonly records: readonly BuildRecord[] }
  | { readonly ok: false; readonly problems: readonly BuildProblem[] };

/**
 * Sees whether anything at all (rows of a file, a JSON document) is a whole build: every record of a known kind and
 * shape, ids given once, every pointer to something that is there, one set of settings, one datum per axis, one casting per part.
 */
export function validateBuild(records: readonly unknown[]): Validated {
  const problems: BuildProblem[] = [];
  const good: (readonly [index: number, record: BuildRecord])[] = [];
  const byId = new Map<RecordId, BuildRecord>();
  records.forEach((raw, index) => {
    const record = readRecord(raw, index, problems);
    if (!record) return;
    if (byId.has(record.id)) {
      problems.push({
        code: 'id-twice',
        index,
        field: 'id',
        what: `the id ${record.id} is given to an earlier record too`,
        remedy: 'Give every record an id of its own.',
      });
      return;
    }
    byId.set(record.id, record);
    good.push([index, record]);
  });
  if (!byId.has(SETTINGS_ID)) {
    // Where the settings are there but unreadable, that has been said already.
    if (!records.some((raw) => kindIn(raw) === 'settings')) {
      problems.push({
        code: 'settings-missing',
        index: undefined,
        field: '',
        what: 'there is no record of build settings',
        remedy: `Add one record of kind "settings" with the id "${SETTINGS_ID}".`,
      });
    }
  }
  const unreadable = problems.some(({ code }) => code === 'field' || code === 'kind-unknown');
  checkPointers(good, byId, unreadable, problems);
  return problems.length === 0 ? { ok: true, records: good.map(([, record]) => record) } : { ok: false, problems };
}

const kindIn = (raw: unknown): unknown =>
  typeof raw === 'object' && raw !== null && 'kind' in raw ? raw.kind : undefined;

function readRecord(raw: unknown, index: number, problems: BuildProblem[]): BuildRecord | undefined {
  const kind = kindIn(raw);
  if (typeof kind !== 'string' || !Object.hasOwn(schemaOf, kind)) {
    problems.push({
      code: 'kind-unknown',
      index,
      field: 'kind',
      what: kind === undefined ? 'the record does not say its kind' : `"${String(kind)}" is no kind of record`,
      remedy: `Write one of ${Object.keys(schemaOf).join(', ')}.`,
    });
    return undefined;
  }
  const parsed = schemaOf[kind as BuildRecord['kind']].safeParse(raw);
  if (parsed.success) return parsed.data;
  for (const issue of parsed.error.issues) {
    const unknownKeys = issue.code === 'unrecognized_keys' ? issue.keys.map((key) => `"${key}"`).join(', ') : undefined;
    problems.push({
      code: 'field',
      index,
      field: issue.path.map(String).join('/'),
      what: unknownKeys ? `a ${kind} has no field ${unknownKeys}` : `it does not fit: ${lowerFirst(issue.message)}`,
      remedy: unknownKeys ? 'Take it out, or mend its spelling.' : 'Write what the field can hold.',
    });
  }
  return undefined;
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

function checkPointers(
  good: readonly (readonly [number, BuildRecord])[],
  byId: ReadonlyMap<RecordId, BuildRecord>,
  /** Some records could not be read: what points at them is not to be blamed twice. */
  unreadable: boolean,
  problems: BuildProblem[],
): void {
  const datums = new Map<string, string>();
  const castings = new Set<string>();
  const get = <K extends BuildRecord['kind']>(kind: K, id: RecordId): RecordOf<K> | undefined => {
    const record = byId.get(id);
    return record?.kind === kind ? (record as RecordOf<K>) : undefined;
  };
  for (const [index, record] of good) {
    if (record.kind === 'body') checkBody(index, record, byId, unreadable, problems);
    if (record.kind === 'solid') checkMesh(index, record, problems);
    if (isPlan(record)) {
      for (const fault of planFaults(record, (id) => byId.get(id), unreadable)) problems.push({ index, ...fault });
    }
    if (record.kind === 'casting') {
      if (castings.has(record.part)) {
        const part = get('part', record.part);
        const what = `an earlier record says already how ${part ? `"${part.name}"` : record.part} is cast`;
        problems.push({ code: 'two-castings', index, field: 'part', what, remedy: 'Keep one casting per part.' });
      }
      castings.add(record.part);
    }
    if (record.kind !== 'station' && record.kind !== 'dimension') continue;
    const say = (code: BuildProblem['code'], field: string, what: string, remedy: string) =>
      problems.push({ code, index, field, what, remedy });
    if (!get('part', record.part) && !unreadable) {
      say('part-missing', 'part', `there is no part ${record.part}`, 'Add that part, or name one that is there.');
    }
    if (record.kind === 'station') {
      if (!record.datum) continue;
      const axis = `${record.part} ${record.axis}`;
      const other = datums.get(axis);
      if (other === undefined) datums.set(axis, record.name);
      else {
        const what = `"${other}" is the datum of axis ${record.axis} of the same part already`;
        say('two-datums', 'datum', what, 'Keep one datum per axis: set the other to false.');
      }
    } else if (record.measure.type === 'between') {
      const from = get('station', record.measure.from);
      const to = get('station', record.measure.to);
      if (record.measure.from === record.measure.to) {
        say('same-station', 'measure/to', 'it measures from a station to itself', 'Name two different stations.');
      }
      for (const [end, station] of [['from', from] as const, ['to', to] as const]) {
        if (!station) {
          if (unreadable) continue;
          const what = `there is no station ${record.measure[end]}`;
          say('station-missing', `measure/${end}`, what, 'Add that station, or name one that is there.');
        } else if (station.part !== record.part) {
          const what = `"${station.name}" is a station of another part`;
          say('station-of-other-part', `measure/${end}`, what, 'Name a station of the same part.');
        }
      }
      if (from && to && from.axis !== to.axis) {
        const what = `"${from.name}" lies along ${from.axis} and "${to.name}" along ${to.axis}`;
        say('station-of-other-axis', 'measure/to', what, 'Name two stations of one axis.');
      }
    }
  }
}

function checkBody(
  index: number,
  body: Body,
  byId: ReadonlyMap<RecordId, BuildRecord>,
  unreadable: boolean,
  problems: BuildProblem[],
): void {
  for (const fault of bodyFaults(body, (id) => byId.get(id), unreadable)) problems.push({ index, ...fault });
}

function checkMesh(index: number, solid: Solid, problems: BuildProblem[]): void {
  const fault = meshFault(solid);
  if (!fault) return;
  problems.push({ code: 'mesh-unsound', index, ...fault, remedy: 'Import the solid from its file again.' });
}
