import type { Operation } from '../../build/operation.ts';
import { holeToTap } from '../../tables/tap-drill.ts';
import { type MadeHole, sizeIn } from './made-holes.ts';
import type { ReadOperation } from './read-operation.ts';
import type { Answers } from './route-part.ts';

/** One hole, or several alike, that an operation works on. */
export interface HoleCut {
  readonly hole: MadeHole;
  /** How far the tool goes in at its full diameter, mm. */
  readonly depthMm: number | undefined;
}

/**
 * The diameter that speed and feed are reckoned at, in mm: as its record says, else as the drawing has it of what the
 * operation makes. A tapped hole is drilled to the hole to tap.
 */
export function cuttingDiameter(operation: Operation, read: ReadOperation, answers: Answers): number | undefined {
  const { tool, cut, holes } = read;
  const hole = holes[0];
  switch (operation.process) {
    case 'face':
    case 'turn':
    case 'bore':
      return cut?.diameterMm ?? diameterMade(operation, answers) ?? hole?.diameterMm;
    case 'drill':
      return tool.diameterMm ?? (hole && drilledDiameter(hole));
    case 'ream':
    case 'tap':
      return tool.diameterMm ?? hole?.diameterMm;
    case 'countersink':
      return tool.diameterMm ?? hole?.countersink?.diameterMm;
    case 'counterbore':
      return tool.diameterMm ?? hole?.counterbore?.diameterMm;
    default:
      return tool.diameterMm;
  }
}

/** What is drilled for a hole: of a thread the hole to tap. */
function drilledDiameter({ diameterMm, thread }: MadeHole): number | undefined {
  if (diameterMm === undefined || !thread) return diameterMm;
  return thread.pitchMm === undefined ? undefined : holeToTap(diameterMm, thread.pitchMm);
}

/** The first diameter among the sizes that an operation makes. */
function diameterMade({ makes }: Operation, answers: Answers): number | undefined {
  for (const id of makes) {
    if (!id.startsWith('dimension:')) continue;
    const measure = answers.size(id as Parameters<Answers['size']>[0])?.record.measure;
    if (measure?.type !== 'size' || (measure.form !== 'diameter' && measure.form !== 'radius')) continue;
    return sizeIn(answers, id as Parameters<Answers['size']>[0], 'diameter');
  }
  return undefined;
}

/** How deep the tool goes into each of the holes. */
export function holeCuts({ process }: Operation, read: ReadOperation): readonly HoleCut[] {
  return read.holes.map((hole) => {
    switch (process) {
      case 'countersink':
        return { hole, depthMm: sinkDepth(hole) };
      case 'counterbore':
        return { hole, depthMm: hole.counterbore?.depthMm ?? read.cut?.lengthMm };
      default:
        return { hole, depthMm: read.cut?.lengthMm ?? hole.depthMm };
    }
  });
}

/** Depth of a countersink from where it meets the hole to its mouth. */
function sinkDepth(hole: MadeHole): number | undefined {
  const drilled = drilledDiameter(hole);
  const { diameterMm, angleDeg } = hole.countersink ?? {};
  if (drilled === undefined || diameterMm === undefined || angleDeg === undefined) return undefined;
  if (!(angleDeg > 0 && angleDeg < 180)) return undefined;
  return Math.max(0, (diameterMm - drilled) / 2) / Math.tan((angleDeg * Math.PI) / 360);
}
