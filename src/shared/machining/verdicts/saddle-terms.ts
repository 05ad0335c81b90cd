import { type HeadTool, type LatheStand, stretchBetween } from '../setups/lathe-stand.ts';
import type { Scene } from '../setups/scene.ts';
import type { World } from '../setups/world.ts';
import type { Asking } from './asking.ts';
import { farthestTerm } from './farthest-term.ts';
import type { Term } from './question.ts';

/** What of the saddle must pass beneath the work: along the bed from where a tool set square would have its edge. */
export interface SaddleZone {
  /** Radius that is free over it. */
  readonly allowed: number;
  readonly towardsHead: number;
  readonly towardsTail: number;
}
export const saddleKinds = ['over-saddle', 'over-cross-slide'] as const;
export type SaddleKind = (typeof saddleKinds)[number];

/** The zone of the wings, or of the cross slide; what is not known of it is put into `ask`. */
export function saddleZone(kind: SaddleKind, ask: Asking): SaddleZone {
  if (kind === 'over-saddle') {
    const allowed = ask.figure('swingOverSaddle') / 2;
    return { allowed, towardsHead: ask.figure('saddleHead'), towardsTail: ask.figure('saddleTail') };
  }
  const allowed = ask.figure('swingOverCrossSlide') / 2;
  const half = ask.figure('crossSlideWidth') / 2;
  return { allowed, towardsHead: half, towardsTail: half };
}

/** What turns over a zone of the saddle while it stands from one place to another. */
export interface OverZone {
  readonly scene: Scene;
  readonly stand: LatheStand;
  readonly zone: SaddleZone;
  readonly turnsWith: HeadTerm | undefined;
}

/** How far a piece reaches over the zone; after the last piece the chuck or the plate. */
export function overZone(
  { scene, stand, zone, turnsWith }: OverZone,
  [head, tail]: readonly [number, number],
  world: World,
  carrier: number,
): Term | undefined {
  const [from, to] = [head - zone.towardsHead, tail + zone.towardsTail];
  const piece = scene.worlds.adding[carrier];
  if (piece === undefined) return turnsWith?.(world, from, to, zone.allowed);
  return farthestTerm(world, piece, stretchBetween(stand.sense * from, stand.sense * to), zone.allowed);
}

type HeadTerm = (world: World, from: number, to: number, allowed: number) => Term | undefined;

/** The chuck or plate that turns with the work, as far as it is known: a lathe's own passes over its own saddle, or nearly so. */
export function headPiece(scene: Scene, stand: LatheStand): HeadTerm | undefined {
  const { head, sense } = stand;
  const radius = head && headRadius(scene, head);
  const length = head && scene.figures.values.get(head.lengthKey);
  if (radius === undefined || length === undefined || stand.unknown.length > 0) return undefined;
  return (world, from, to, allowed) => {
    const nose = sense * stand.nose(world);
    if (from >= nose + length || to <= nose) return undefined;
    return { has: allowed, needs: radius, at: sense * (nose + length) };
  };
}

/** How far a chuck with its jaws opened, or the face plate, reaches from the line; undefined where it is not known. */
export function headRadius({ figures }: Pick<Scene, 'figures'>, head: HeadTool): number | undefined {
  const diameter = figures.values.get(head.diameterKey);
  if (diameter === undefined) return undefined;
  return diameter / 2 + (head.is === 'chuck' ? (figures.values.get('jawReach') ?? 0) : 0);
}
