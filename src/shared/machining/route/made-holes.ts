import type { BodyId, DimensionId } from '../../base/ids.ts';
import { type SizeRole, servesAs, valueInRole } from '../../build/body-uses.ts';
import type { Operation } from '../../build/operation.ts';
import { parseThread } from '../../quantity/parse-thread.ts';
import type { PlacedBody } from '../../solid/placed.ts';
import { coarsePitch } from '../../tables/metric-threads.ts';
import type { Answers } from './route-part.ts';

/** A round hole that a body takes out of its part. Sizes that are not known are undefined. */
export interface MadeHole {
  readonly body: BodyId;
  /** How many of it there are. */
  readonly copies: number;
  /** Of a thread the major diameter. */
  readonly diameterMm: number | undefined;
  /** Of the full diameter. */
  readonly depthMm: number | undefined;
  /** Undefined of a plain hole; without a pitch where that is not known. */
  readonly thread: { readonly pitchMm: number | undefined } | undefined;
  readonly counterbore: { readonly diameterMm: number | undefined; readonly depthMm: number | undefined } | undefined;
  readonly countersink: { readonly diameterMm: number | undefined; readonly angleDeg: number | undefined } | undefined;
}

/** The round hole that a body is: a hole of the drawing, or a cylinder that takes away. */
export function holeOf({ record, moves }: PlacedBody, answers: Answers): MadeHole | undefined {
  const { shape } = record;
  const length = (from: Parameters<Answers['at']>[0], to: Parameters<Answers['at']>[0]): number | undefined => {
    const [a, b] = [answers.at(from), answers.at(to)];
    return a === undefined || b === undefined ? undefined : Math.abs(b - a);
  };
  const size = (id: DimensionId, role: SizeRole) => sizeIn(answers, id, role);
  const copies = Math.max(1, moves.length);
  if (shape.type === 'cylinder' && !record.adds && shape.bore === undefined) {
    return {
      body: record.id,
      copies,
      diameterMm: size(shape.diameter, 'diameter'),
      depthMm: length(...shape.ends),
      thread: threadOf(answers, shape.diameter),
      counterbore: undefined,
      countersink: undefined,
    };
  }
  if (shape.type !== 'hole') return undefined;
  const { counterbore, countersink } = shape;
  return {
    body: record.id,
    copies,
    diameterMm: size(shape.diameter, 'diameter'),
    depthMm: length(shape.from, shape.to),
    thread: threadOf(answers, shape.diameter),
    counterbore: counterbore && {
      diameterMm: size(counterbore.diameter, 'diameter'),
      depthMm: size(counterbore.depth, 'length'),
    },
    countersink: countersink && {
      diameterMm: size(countersink.diameter, 'diameter'),
      angleDeg: size(countersink.angle, 'angle'),
    },
  };
}

/** The value of a size in a role; undefined where it has none, or measures something else. */
export function sizeIn(answers: Answers, id: DimensionId, role: SizeRole): number | undefined {
  const known = answers.size(id);
  const value = known?.resolved.value;
  if (known === undefined || value === undefined || !servesAs(known.record.measure, role)) return undefined;
  return valueInRole(known.record, value, role);
}

/** The thread that a size is: its pitch as written, else the coarse one of its major diameter. */
export function threadOf(answers: Answers, id: DimensionId): MadeHole['thread'] {
  const known = answers.size(id);
  if (known?.record.measure.type !== 'size' || known.record.measure.form !== 'thread') return undefined;
  const written = parseThread(known.record.value);
  const major = known.resolved.value;
  return { pitchMm: written?.ok ? written.value.pitchMm : major === undefined ? undefined : coarsePitch(major) };
}

/** The size by which a body is a hole. */
const holeSize = ({ record: { shape } }: PlacedBody): DimensionId | undefined =>
  shape.type === 'hole' || shape.type === 'cylinder' ? shape.diameter : undefined;

/** The bodies that an operation makes, by themselves or by the size of a hole. */
export function bodiesMade({ makes }: Pick<Operation, 'makes'>, bodies: readonly PlacedBody[]): readonly PlacedBody[] {
  const made = new Set<string>(makes);
  return bodies.filter((body) => {
    if (made.has(body.record.id)) return true;
    const size = holeSize(body);
    return size !== undefined && !body.record.adds && made.has(size);
  });
}
