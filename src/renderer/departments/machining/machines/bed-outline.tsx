import { useEffect, useRef, useState } from 'react';
import type { Machine } from '../../../../shared/build/machine.ts';
import { readFigures } from '../../../../shared/plan/machine-figures-read.ts';
import type { LengthUnit } from '../../../../shared/quantity/kind.ts';
import { Button, IconButton } from '../../../kit/button.tsx';
import { RemoveIcon, StopIcon } from '../../../kit/icons.tsx';

type Bed = Machine['bed'];
type BedPoint = Bed[number];

interface BedOutlineProps {
  readonly machine: Machine;
  readonly unit: LengthUnit;
  readonly readOnly: boolean;
  readonly refused: string | undefined;
  readonly onSet: (bed: Bed) => void;
}

/** A bed that is being written: what each point comes to, and what is wrong with the first that is wrong. */
function readBed(machine: Machine, bed: Bed, unit: LengthUnit) {
  const whole = readFigures({ ...machine, figures: {}, bed }, unit);
  // Points that stand are drawn while others are being written.
  const points = bed.flatMap((point) => {
    const pair = readFigures({ ...machine, figures: {}, bed: [point, point] }, unit).bed;
    return pair?.[0] === undefined ? [] : [[pair[0].acrossMm, pair[0].downMm] as const];
  });
  const wrong = new Set(whole.problems.map(({ key }) => key));
  const [first] = whole.problems;
  const at = first === undefined ? undefined : /^bed\/(\d+)/.exec(first.key)?.[1];
  const problem = first && `Point ${Number(at) + 1}: ${first.problem}`;
  return { isSound: whole.problems.length === 0, points, wrong, problem };
}

/** The top of the bed across it, point by point from front to back, with a small picture as it is read. */
export function BedOutline({ machine, unit, readOnly, refused, onSet }: BedOutlineProps) {
  const [points, setPoints] = useState<Bed>(machine.bed);
  /** The point that is being written: what comes back of earlier ones must not take from under the fingers what is typed. */
  const writing = useRef<number | undefined>(undefined);
  useEffect(() => {
    setPoints((now) => {
      const at = writing.current;
      const own = at === undefined ? undefined : now[at];
      return at === undefined || own === undefined ? machine.bed : machine.bed.toSpliced(at, 1, own);
    });
  }, [machine.bed]);
  const read = readBed(machine, points, unit);
  // A point that is being begun is not yet wrong.
  const begun = points.some(({ across, down }) => across.trim() === '' || down.trim() === '') || points.length === 1;
  const problem = begun ? undefined : (read.problem ?? refused);
  const settle = (next: Bed) => {
    if (!readBed(machine, next, unit).isSound) return;
    writing.current = undefined;
    if (JSON.stringify(next) !== JSON.stringify(machine.bed)) onSet(next);
  };
  const change = (at: number, part: Partial<BedPoint>) => {
    writing.current = at;
    setPoints((now) => now.map((one, i) => (i === at ? { ...one, ...part } : one)));
  };
  const flatten = () => {
    writing.current = undefined;
    setPoints([]);
    settle([]);
  };
  const remove = (at: number) => {
    const next = points.filter((_, i) => i !== at);
    writing.current = undefined;
    setPoints(next);
    settle(next);
  };
  return (
    <section className="figure-group" aria-label="Bed across">
      <h3 className="lettering">Bed across</h3>
      <p className="soft bed-help">
        Flat at its height while there are no points. Else from front (negative) to back, how far down each lies from
        the line of centres: ways, gaps between them, raised vees.
      </p>
      <div className="bed-outline">
        <table className="bed-points">
          <thead>
            <tr className="lettering soft">
              <th scope="col">
                <span className="unseen">Point</span>
              </th>
              <th scope="col">Across</th>
              <th scope="col">Down</th>
              {!readOnly && (
                <th scope="col">
                  <span className="unseen">Remove</span>
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {points.map((point, i) => (
              <tr
                // biome-ignore lint/suspicious/noArrayIndexKey: points have no identity, they stand in order
                key={i}
                onBlur={({ currentTarget, relatedTarget }) => currentTarget.contains(relatedTarget) || settle(points)}
              >
                <th scope="row" className="figure soft">
                  {i + 1}
                </th>
                {(['across', 'down'] as const).map((way) => (
                  <td key={way}>
                    <input
                      className="input figure"
                      aria-label={`Point ${i + 1}, ${way}`}
                      value={point[way]}
                      readOnly={readOnly}
                      aria-invalid={!begun && read.wrong.has(`bed/${i}/${way}`) ? true : undefined}
                      onChange={(event) => change(i, { [way]: event.target.value })}
                      onKeyDown={(event) => event.key === 'Enter' && settle(points)}
                    />
                  </td>
                ))}
                {!readOnly && (
                  <td>
                    <IconButton label={`Remove point ${i + 1}`} icon={<RemoveIcon />} onClick={() => remove(i)} />
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
        <BedPicture points={read.points} />
      </div>
      {problem !== undefined && (
        <p className="figure-error">
          <StopIcon />
          {problem}
        </p>
      )}
      {!readOnly && (
        <div className="setup-acts">
          <Button onClick={() => setPoints([...points, { across: '', down: points.at(-1)?.down ?? '' }])}>
            Add a Point
          </Button>
          {points.length > 0 && <Button onClick={flatten}>Make It Flat</Button>}
        </div>
      )}
    </section>
  );
}

const WIDTH = 260;
const HEIGHT = 150;
const EDGE = 14;

/** The line of centres and the bed under it, to scale. */
function BedPicture({ points }: { readonly points: readonly (readonly [number, number])[] }) {
  if (points.length < 2) return null;
  const across = points.map(([x]) => x);
  const down = points.map(([, y]) => y);
  const [left, right, low] = [Math.min(...across, 0), Math.max(...across, 0), Math.max(...down)];
  const scale = Math.min((WIDTH - 2 * EDGE) / Math.max(1, right - left), (HEIGHT - 2 * EDGE) / Math.max(1, low * 1.2));
  const x = (mm: number) => EDGE + (mm - left) * scale;
  const y = (mm: number) => EDGE + mm * scale;
  const top = points.map(([a, d]) => `${x(a)},${y(d)}`).join(' ');
  const foot = y(low * 1.2);
  return (
    <svg
      className="bed-picture"
      width={WIDTH}
      height={HEIGHT}
      role="img"
      aria-label="Bed across, seen from the tailstock"
    >
      <polygon
        className="bed-body"
        points={`${top} ${x(points.at(-1)?.[0] ?? 0)},${foot} ${x(points[0]?.[0] ?? 0)},${foot}`}
      />
      <path className="bed-centre" d={`M${x(0) - 8} ${y(0)}h16M${x(0)} ${y(0) - 8}v16`} />
    </svg>
  );
}
