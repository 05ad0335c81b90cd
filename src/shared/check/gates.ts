import type { DimensionId, PartId } from '../base/ids.ts';
import type { Part } from '../build/part.ts';
import type { Drawing } from '../drawing/drawing.ts';
import type { Finding, Gate, GateState } from './rule.ts';

/** Gates that some rule feeds. One without rules would always be open, and say so of what nobody looked at. */
const gatesShown = ['cut'] as const satisfies readonly Gate[];

/** Findings that keep a gate shut, by the part that they are of and by each dimension that they point at. */
export interface Shutters {
  readonly byPart: ReadonlyMap<PartId, readonly Finding[]>;
  readonly byDimension: ReadonlyMap<DimensionId, readonly Finding[]>;
}

const isShut = (finding: Finding): boolean => finding.accepted === undefined && finding.shuts.length > 0;

/** @param owner the part that a record is of. */
export function shuttersOf(findings: readonly Finding[], owner: (id: string) => PartId | undefined): Shutters {
  const byPart = new Map<PartId, Finding[]>();
  const byDimension = new Map<DimensionId, Finding[]>();
  for (const finding of findings) {
    if (!isShut(finding)) continue;
    const parts = new Set<PartId>(finding.part ? [finding.part] : []);
    for (const id of finding.at) {
      const part = owner(id);
      if (part) parts.add(part);
      if (id.startsWith('dimension:')) push(byDimension, id as DimensionId, finding);
    }
    for (const part of parts) push(byPart, part, finding);
  }
  return { byPart, byDimension };
}

function push<K>(map: Map<K, Finding[]>, key: K, finding: Finding): void {
  const list = map.get(key);
  if (list) list.push(finding);
  else map.set(key, [finding]);
}

/** Dimensions of other parts that the given ones hang on through formulas, however far back. */
export function upstreamOf(own: readonly DimensionId[], drawing: Drawing): ReadonlySet<DimensionId> {
  const seen = new Set<DimensionId>(own);
  // A set is walked in the order of its members, those added on the way included.
  for (const id of seen) for (const reference of drawing.dimension(id).references) seen.add(reference);
  for (const id of own) seen.delete(id);
  return seen;
}

/** The gates of one part: shut by its own findings first, then by those upstream. A bought part has none to cut. */
export function gatesOfPart(part: Part, upstream: ReadonlySet<DimensionId>, shutters: Shutters): readonly GateState[] {
  return gatesShown.map((gate): GateState => {
    if (part.make === 'bought') return { gate, state: 'not needed', because: [] };
    const because = new Set<string>();
    for (const finding of shutters.byPart.get(part.id) ?? [])
      if (finding.shuts.includes(gate)) because.add(finding.key);
    if (upstream.size > 0) {
      for (const [id, findings] of shutters.byDimension) {
        if (!upstream.has(id)) continue;
        for (const finding of findings) if (finding.shuts.includes(gate)) because.add(finding.key);
      }
    }
    return { gate, state: because.size === 0 ? 'open' : 'shut', because: [...because] };
  });
}

export const sameGates = (a: readonly GateState[] | undefined, b: readonly GateState[]): boolean =>
  a?.length === b.length &&
  a.every((gate, i) => {
    const other = b[i];
    return (
      gate.gate === other?.gate &&
      gate.state === other.state &&
      gate.because.length === other.because.length &&
      gate.because.every((key, j) => key === other.because[j])
    );
  });
