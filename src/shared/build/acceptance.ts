import { z } from 'zod';
import { idSchema } from './fields.ts';

/**
 * A finding that the builder takes on themselves, with the reason in words. It holds only while the finding's figures
 * stay what they were: a changed figure re-opens the finding by itself.
 */
export const acceptanceSchema = z.strictObject({
  kind: z.literal('acceptance'),
  id: idSchema('acceptance'),
  /** Id of the rule whose finding is accepted. */
  rule: z.string().min(1).max(100),
  /** The finding's key (`findingKey` in check): rule, message and what it points at. */
  finding: z.string().min(1).max(20_000),
  /** The finding's figures as they were when accepted (`figuresOf` in check). */
  figures: z.string().max(10_000),
  reason: z.string().min(1).max(2_000),
  /** ISO 8601 date and time, UTC. */
  acceptedAt: z.string().max(40),
});

export type Acceptance = Readonly<z.infer<typeof acceptanceSchema>>;
