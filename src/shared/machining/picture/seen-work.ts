import type { PartId } from '../../base/ids.ts';
import { axesAcross } from '../../build/body-uses.ts';
import type { Axis } from '../../build/station.ts';
import type { ViewFrame } from '../../sheet/view-frame.ts';
import { viewLines } from '../../sheet/view-lines.ts';
import type { PartMesh } from '../../solid/placed.ts';
import type { Silhouette } from '../swept/hidden-ways.ts';
import { endOutline, endOutlineOfMesh, sideOutline, sideOutlineOfMesh } from '../swept/silhouettes.ts';
import type { SweepLine, SweepPiece } from '../swept/sweep-piece.ts';
import type { PictureSide } from './picture.ts';
import { crossed } from './picture-frame.ts';
import type { PictureAxis, PictureFrame, Point, SeenWork } from './scene.ts';

/** What is put into the machine, as it is seen. */
export interface WorkSeen {
  readonly pieces: readonly SweepPiece[];
  readonly line: SweepLine;
  /** The part that is worked upon, and its solid; undefined while that is not made: then its bodies stand for it. */
  readonly part: PartId;
  readonly mesh: PartMesh | undefined;
}

/** To the right and up in a view. */
function axesOf({ along, back, up }: PictureFrame, side: PictureSide): readonly [PictureAxis, PictureAxis] {
  switch (side) {
    case 'front':
      return [along, up];
    case 'end':
      return [back, up];
    case 'above':
      return [along, back];
  }
}

/** The work from one side of the picture: its visible edges, and what it hides behind it. */
export function seenWork(work: WorkSeen, frame: PictureFrame, side: PictureSide): SeenWork {
  const [right, up] = axesOf(frame, side);
  const lines: (readonly Point[])[] = [];
  const cover: (readonly Point[])[] = [];
  const { mesh, line } = work;
  if (mesh !== undefined) {
    for (const { points, closed, isHidden } of viewLines(mesh, viewFrame(right, up), undefined).lines) {
      if (isHidden) continue;
      const seen = points.map(([x, y]): Point => [x - right.sign * right.zero, y - up.sign * up.zero]);
      lines.push(closed && seen[0] !== undefined ? [...seen, seen[0]] : seen);
    }
    cover.push(...placed(outlineOfMesh(mesh, line, right.axis, up.axis), line, right, up));
  }
  for (const piece of work.pieces) {
    if (!piece.adds || (mesh !== undefined && isOwnBody(piece, work.part))) continue;
    piece.moves.forEach((_, copy) => {
      const outline = placed(outlineOfPiece(piece, copy, line, right.axis, up.axis), line, right, up);
      cover.push(...outline);
      for (const loop of outline) lines.push(loop[0] === undefined ? loop : [...loop, loop[0]]);
    });
  }
  return { lines, cover };
}

const isOwnBody = ({ piece }: SweepPiece, part: PartId): boolean => piece.is === 'body' && piece.part === part;

function viewFrame(right: PictureAxis, up: PictureAxis): ViewFrame {
  return { across: right, up, towards: crossed(right, up) };
}

/** Which of the three views of a line shows two axes; a silhouette has the line, or the first axis across, first. */
function viewOf(line: SweepLine, a: Axis, b: Axis): 'first' | 'second' | 'end' {
  if (a !== line.axis && b !== line.axis) return 'end';
  const other = a === line.axis ? b : a;
  return axesAcross(line.axis)[0] === other ? 'first' : 'second';
}

function outlineOfMesh(mesh: PartMesh, line: SweepLine, a: Axis, b: Axis): Silhouette {
  const view = viewOf(line, a, b);
  return view === 'end' ? endOutlineOfMesh(mesh, line) : sideOutlineOfMesh(mesh, line, view);
}

function outlineOfPiece(piece: SweepPiece, copy: number, line: SweepLine, a: Axis, b: Axis): Silhouette {
  const view = viewOf(line, a, b);
  return view === 'end' ? endOutline(piece, copy, line) : sideOutline(piece, copy, line, view);
}

/** A silhouette in the places of the picture. */
function placed(
  loops: Silhouette,
  line: SweepLine,
  right: PictureAxis,
  up: PictureAxis,
): readonly (readonly Point[])[] {
  const [first] = axesAcross(line.axis);
  // Along the line places count from the datum, across it from the line.
  const firstAxis = right.axis === line.axis || up.axis === line.axis ? line.axis : first;
  const at = (axis: Axis, p: number, q: number): number => {
    if (axis === line.axis) return p;
    const from = axis === first ? line.u : line.v;
    return (axis === firstAxis ? p : q) + from;
  };
  return loops.map((loop) =>
    loop.map(
      ({ p, q }): Point => [right.sign * (at(right.axis, p, q) - right.zero), up.sign * (at(up.axis, p, q) - up.zero)],
    ),
  );
}
