import type { DimensionId } from '../base/ids.ts';
import type { Dimension } from '../build/dimension.ts';
import type { Part } from '../build/part.ts';
import type { Drawing } from '../drawing/drawing.ts';
import type { Finding, Gate, GateState } from './rule.ts';

/** Gates that some rule feeds. One without rules would always be open, and say so of what nobody looked at. */
const gatesShown = ['cut', 'machine'] as const satisfies readonly Gate[];

/** What is not drawn well enough to cut its pattern is not to be machined by that drawing either. */
const shuts = ({ shuts: gates, department }: Finding, gate: Gate): boolean =>
  gates.includes(gate) || (gate === 'machine' && department === 'drawing' && gates.includes('cut'));

const isShut = (finding: Finding): boolean => finding.accepted === undefined && finding.shuts.length > 0;

/** Findings that keep a gate shut, with their place in the list of all, by each dimension that they point at. */
export type Shutters = ReadonlyMap<DimensionId, { readonly place: number; readonly findings: readonly Finding[] }>;

export function shuttersOf(findings: readonly Finding[]): Shutters {
  const shutters = new Map<DimensionId, { place: number; findings: Finding[] }>();
  for (const finding of findings) {
    if (!isShut(finding)) continue;
    for (const id of finding.at) {
      if (!id.startsWith('dimension:')) continue;
      const known = shutters.get(id as DimensionId);
      if (known) known.findings.push(finding);
      else shutters.set(id as DimensionId, { place: shutters.size, findings: [finding] });
    }
  }
  return shutters;
}

/** Findings that keep a gate shut and point at one of the given dimensions, each dimension's together. */
export function shuttersAmong(dimensions: ReadonlySet<DimensionId>, shutters: Shutters): readonly Finding[] {
  const found = [];
  for (const id of dimensions) {
    const entry = shutters.get(id);
    if (entry) found.push(entry);
  }
  return found.sort((a, b) => a.place - b.place).flatMap(({ findings }) => findings);
}

/** Dimensions of other parts that the given ones hang on through formulas, however far back. */
export function upstreamOf(own: readonly Dimension[], drawing: Drawing): ReadonlySet<DimensionId> {
  const seen = new Set<DimensionId>();
  for (const { id } of own) for (const reference of drawing.dimension(id).references) seen.add(reference);
  // A set is walked in the order of its members, those added on the way included.
  for (const id of seen) for (const reference of drawing.dimension(id).references) seen.add(reference);
  for (const { id } of own) seen.delete(id);
  return seen;
}

/**
 * The gates of one part: shut by its own findings first, then by those upstream. A bought part has none to cut. The gate to machine is there once
 * a set-up or an operation is planned: before that nobody has looked.
 * @param concerning findings of the part and those that point at something of it.
 * @param upstream findings that keep a gate shut, of what its formulas hang on in other parts.
 */
export function gatesOfPart(
  part: Part,
  concerning: readonly Finding[],
  upstream: readonly Finding[],
  isPlanned: boolean,
): readonly GateState[] {
  const there = gatesShown.filter((gate) => gate !== 'machine' || isPlanned);
  return there.map((gate): GateState => {
    if (gate === 'cut' && part.make === 'bought') return { gate, state: 'not needed', because: [] };
    const because = new Set<string>();
    for (const finding of concerning) if (isShut(finding) && shuts(finding, gate)) because.add(finding.key);
    for (const finding of upstream) if (shuts(finding, gate)) because.add(finding.key);
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
