import { z } from 'zod';
import { recordSchema } from './kinds.ts';

export const BUILD_FORMAT = 'waywright-build';
/**
 * Raised when a reader of the version before would misread or refuse the document; every version stays readable.
 * 1: parts, stations, dimensions, acceptances. 2: bodies and solids too. 3: materials too.
 * 4: machines, set-ups and operations too. 5: alloys, castings, patterns and pours too.
 */
export const BUILD_VERSION = 5;
/** Every version that can be read; a document of an earlier one is a document of the newest as it stands. */
export const buildVersions = [1, 2, 3, 4, BUILD_VERSION] as const;

/** A named state of the drawings as it stands in the JSON form: what was issued, whole. */
export const issuedSchema = z.strictObject({
  /** `A`, `B`, … as printed in the title block. */
  letter: z.string().min(1).max(20),
  title: z.string().max(200),
  note: z.string().max(20_000),
  /** ISO 8601 date and time, UTC. */
  issuedAt: z.string().max(40),
  /** The records of the build as they were. */
  records: z.array(recordSchema),
});

export type IssuedState = Readonly<z.infer<typeof issuedSchema>>;

/** The JSON form of a build file: the same content, for other tools and for version control. */
export const buildDocumentSchema = z
  .strictObject({
    /** Lets an editor find the schema; not kept. */
    $schema: z.string().optional(),
    format: z.literal(BUILD_FORMAT),
    version: z.literal(buildVersions),
    records: z.array(recordSchema),
    issues: z.array(issuedSchema).optional(),
  })
  .meta({
    title: 'Waywright build',
    description:
      'One machine: its materials and alloys, parts, stations, dimensions, bodies, castings, patterns, pours, set-ups, operations and acceptances, and the machines of the shop.',
  });
