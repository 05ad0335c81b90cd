import { z } from 'zod';
import { meshUnits } from '../../../shared/build/solid.ts';
import { solidForms } from '../../../shared/solid/formats/solid-form.ts';

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
    solid: z
      .strictObject({
        part: z.string(),
        name: z.string().describe('Of the body that was made.'),
        form: z.enum(solidForms),
        unit: z.enum(meshUnits).describe('What the numbers of the file were taken as.'),
        sizeMm: z.tuple([z.number(), z.number(), z.number()]).describe('Along the three axes of the file.'),
        volumeMm3: z.number(),
        triangles: z.number().int(),
        surfaces: z.number().int().describe('Closed surfaces, those of cavities among them.'),
        remarks: z.array(z.string()).describe('What was mended or passed over.'),
      })
      .optional()
      .describe('The solid that was taken in, if it was one.'),
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
