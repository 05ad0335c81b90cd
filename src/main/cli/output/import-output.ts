import { z } from 'zod';

/** What `import --json` prints. */
export const importOutputSchema = z
  .strictObject({
    format: z.literal('waywright-import'),
    version: z.literal(1),
    written: z.string().optional().describe('The file that now holds the result; absent when nothing was written.'),
    counts: z.strictObject({
      added: z.number().int(),
      changed: z.number().int(),
      unchanged: z.number().int(),
      refused: z.number().int(),
    }),
    ignoredColumns: z.array(z.string()),
    rows: z.array(
      z.strictObject({
        line: z.number().int().describe('Line of the file on which the row begins, counted from 1.'),
        part: z.string(),
        name: z.string(),
        outcome: z.enum(['added', 'changed', 'unchanged', 'refused']),
        what: z.array(z.string()),
        reason: z.string(),
        remedy: z.string(),
      }),
    ),
  })
  .meta({ title: 'Import of dimensions into a Waywright build' });

export type ImportOutput = Readonly<z.infer<typeof importOutputSchema>>;
