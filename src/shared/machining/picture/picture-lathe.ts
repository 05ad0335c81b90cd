import { chuckKeys, latheStand } from '../setups/lathe-stand.ts';
import { knownCuts, type Scene } from '../setups/scene.ts';
import { clearRadius } from '../swept/clear-radius.ts';
import { createSweeper } from '../swept/sweeper.ts';
import { sweptOutline } from '../swept/swept-outline.ts';
import type { Judged } from './judged.ts';
import { pictureCut } from './picture-cut.ts';
import { latheFrame } from './picture-frame.ts';
import type { LatheHead, LatheScene, LatheTail, Point, SweptStep } from './scene.ts';

/** A turning set-up in the places of its picture. */
export function latheScene(scene: Scene, { profile, extent, barrelOut }: Judged): LatheScene | undefined {
  if (profile === undefined || extent === undefined) return undefined;
  const { figures, setup, worlds } = scene;
  const stand = latheStand(scene);
  const { sense } = stand;
  const zero = sense === 1 ? extent[0] : extent[1];
  // Zero is zero, whichever way the axis runs.
  const place = (at: number): number => sense * (at - zero) + 0;
  const figure = (key: string): number | undefined => figures.values.get(key);
  const half = (key: string): number | undefined => {
    const value = figure(key);
    return value === undefined ? undefined : value / 2;
  };
  const outline = (figures.bed ?? []).map(({ acrossMm, downMm }): Point => [acrossMm, -downMm]);
  const bedRadius = figures.bed
    ? clearRadius(figures.bed.map(({ acrossMm, downMm }) => ({ across: acrossMm, down: downMm }))).radius
    : half('swingOverBed');
  const [gapRadius, gapLength] = [half('swingInGap'), figure('gapLength')];
  const corners = sweptOutline(createSweeper(worlds.pieces, worlds.drawn.line), profile).map(({ at, r }) => ({
    at: place(at),
    r,
  }));
  return {
    is: 'lathe',
    swept: steps(profile, place, sense),
    outline: sense === 1 ? corners : corners.reverse(),
    extent: [0, extent[1] - extent[0]],
    frame: latheFrame(setup.line.axis, sense, zero, worlds.drawn.line),
    bed: { radius: bedRadius, outline },
    gap: gapRadius === undefined || gapLength === undefined ? undefined : { radius: gapRadius, length: gapLength },
    nose: stand.unknown.length === 0 ? place(stand.nose(worlds.drawn)) : undefined,
    head: headOf(scene, figure),
    tail: stand.tailPoint && tailOf(place(stand.tailPoint(worlds.drawn)), figure, barrelOut),
    steady: steadyOf(scene, place, figure),
    saddle: {
      wingRadius: half('swingOverSaddle'),
      towardsHead: figure('saddleHead'),
      towardsTail: figure('saddleTail'),
      slideRadius: half('swingOverCrossSlide'),
      slideWidth: figure('crossSlideWidth'),
      toolHeight: figure('toolHeight'),
      blockWidth: figure('toolBlockWidth'),
      toolOverhang: figure('toolOverhang'),
    },
    cuts: knownCuts(scene).map((cut) => pictureCut(scene, cut, place)),
  };
}

function steps(
  { edges, most, least }: NonNullable<Judged['profile']>,
  place: (at: number) => number,
  sense: 1 | -1,
): readonly SweptStep[] {
  const all = Array.from(most, (radius, i): SweptStep => {
    const [a, b] = [place(edges[i]!), place(edges[i + 1]!)];
    return { from: Math.min(a, b), to: Math.max(a, b), most: radius, least: least[i]! };
  });
  return sense === 1 ? all : all.reverse();
}

function headOf({ setup, reading, worlds }: Scene, figure: (key: string) => number | undefined): LatheHead {
  const { holding } = setup;
  switch (holding.as) {
    case 'three-jaw chuck':
    case 'four-jaw chuck': {
      const keys = chuckKeys[holding.as];
      const grip = reading.amount(holding.diameter, ['diameter', 'width'], 'holding/diameter');
      return {
        is: 'chuck',
        jaws: holding.as === 'three-jaw chuck' ? 3 : 4,
        diameter: figure(keys.diameter),
        jawReach: figure('jawReach'),
        length: figure(keys.length),
        depth: figure(keys.depth),
        grip: grip.ok ? worlds.drawn.amount(grip.value) / 2 : undefined,
        inside: holding.inside,
      };
    }
    case 'face plate':
      return { is: 'plate', diameter: figure('facePlateDiameter'), face: figure('facePlateFace') };
    default:
      return { is: 'centre', length: figure('headCentreLength') };
  }
}

const tailOf = (point: number, figure: (key: string) => number | undefined, out: number | undefined): LatheTail => ({
  point,
  centreLength: figure('tailCentreLength'),
  barrelDiameter: figure('barrelDiameter'),
  out,
  travel: figure('barrelTravel'),
});

function steadyOf(
  { setup, reading, worlds }: Scene,
  place: (at: number) => number,
  figure: (key: string) => number | undefined,
): LatheScene['steady'] {
  const { holding } = setup;
  if (holding.as !== 'steady') return undefined;
  const at = reading.place(holding.at, 'holding/at');
  const diameter = reading.amount(holding.diameter, 'diameter', 'holding/diameter');
  if (!at.ok) return undefined;
  return {
    at: place(worlds.drawn.place(at.value)),
    width: figure('steadyWidth'),
    radius: diameter.ok ? worlds.drawn.amount(diameter.value) / 2 : undefined,
  };
}
