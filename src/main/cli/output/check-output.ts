import { z } from 'zod';
import { partsOf, settingsOf } from '../../../shared/build/look-up.ts';
import type { Build } from '../../../shared/build/records.ts';
import type { Finding } from '../../../shared/check/rule.ts';
import { findingWords } from '../../../shared/check/words.ts';
import type { Works } from '../../../shared/check/works.ts';

const acceptedSchema = z.strictObject({ reason: z.string(), acceptedAt: z.string() });

const gateSchema = z.strictObject({
  gate: z.enum(['cut', 'pour', 'machine', 'fit']),
  state: z.enum(['open', 'shut', 'not needed']),
  because: z.array(z.string()).describe('Keys of the findings that keep it shut.'),
});

const findingSchema = z.strictObject({
  key: z.string().describe('The same finding keeps the same key over edits.'),
  rule: z.string(),
  message: z.string(),
  severity: z.enum(['stop', 'caution', 'note']),
  department: z.enum(['drawing', 'pattern', 'foundry', 'machining', 'fitting', 'erecting']),
  title: z.string(),
  sentence: z.string().describe('What is wrong, and where; figures in the unit of the build.'),
  remedy: z.string().describe('What to do.'),
  part: z.strictObject({ id: z.string(), name: z.string() }).optional(),
  at: z.array(z.strictObject({ id: z.string(), name: z.string() })).describe('What it points at, the first foremost.'),
  data: z
    .record(z.string(), z.union([z.string(), z.number()]))
    .describe('Figures behind the words: a name ending in Mm is in mm, in Deg in degrees, in Kg in kg.'),
  shuts: z.array(z.enum(['cut', 'pour', 'machine', 'fit'])),
  acceptable: z.boolean(),
  accepted: acceptedSchema.optional().describe('Set when the builder has taken it on themselves at these figures.'),
  lapsed: acceptedSchema.optional().describe('An acceptance given at other figures, which holds no longer.'),
});

/** What `check --json` prints. */
export const checkOutputSchema = z
  .strictObject({
    format: z.literal('waywright-check'),
    version: z.literal(1),
    build: z.string().describe('Name of the build.'),
    lengthUnit: z.enum(['mm', 'in']),
    counts: z
      .strictObject({
        stop: z.number().int(),
        caution: z.number().int(),
        note: z.number().int(),
        accepted: z.number().int(),
      })
      .describe('Open findings by severity, and the accepted ones.'),
    findings: z.array(findingSchema),
    parts: z.array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        make: z.enum(['cast', 'stock', 'bought']),
        gates: z.array(gateSchema),
      }),
    ),
  })
  .meta({ title: 'Check of a Waywright build' });

export type CheckOutput = Readonly<z.infer<typeof checkOutputSchema>>;

const nameIn = (build: Build, id: string): string => {
  const record = build.get(id as never);
  return record && 'name' in record ? record.name : id;
};

/** A finding as the outputs show it. */
function findingOutput(build: Build, finding: Finding): CheckOutput['findings'][number] {
  const { key, rule, message, severity, department, part, at, data, shuts, acceptable, accepted, lapsed } = finding;
  const { title, sentence, remedy } = findingWords(finding, settingsOf(build).lengthUnit);
  const acceptance = (given: typeof accepted) => given && { reason: given.reason, acceptedAt: given.acceptedAt };
  const acceptedOutput = acceptance(accepted);
  const lapsedOutput = acceptance(lapsed);
  return {
    key,
    rule,
    message,
    severity,
    department,
    title,
    sentence,
    remedy,
    ...(part ? { part: { id: part, name: nameIn(build, part) } } : {}),
    at: at.map((id) => ({ id, name: nameIn(build, id) })),
    data: { ...data },
    shuts: [...shuts],
    acceptable,
    ...(acceptedOutput ? { accepted: acceptedOutput } : {}),
    ...(lapsedOutput ? { lapsed: lapsedOutput } : {}),
  };
}

export function checkOutput(works: Works): CheckOutput {
  const { build } = works;
  const settings = settingsOf(build);
  const findings = works.findings().map((finding) => findingOutput(build, finding));
  const open = (severity: Finding['severity']): number =>
    findings.filter((finding) => finding.severity === severity && !finding.accepted).length;
  return {
    format: 'waywright-check',
    version: 1,
    build: settings.name,
    lengthUnit: settings.lengthUnit,
    counts: {
      stop: open('stop'),
      caution: open('caution'),
      note: open('note'),
      accepted: findings.filter(({ accepted }) => accepted).length,
    },
    findings,
    parts: partsOf(build).map(({ id, name, make }) => ({
      id,
      name,
      make,
      gates: works.gatesOf(id).map(({ gate, state, because }) => ({ gate, state, because: [...because] })),
    })),
  };
}
