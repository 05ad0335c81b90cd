import type { DimensionId, PartId } from '../../../shared/base/ids.ts';
import { kindOfMeasure } from '../../../shared/build/kind-of-measure.ts';
import type { Setup } from '../../../shared/build/setup.ts';
import type { Axis } from '../../../shared/build/station.ts';
import type { PictureFrame } from '../../../shared/machining/picture/scene.ts';
import type { Piece, Remedy, Share, Verdict } from '../../../shared/machining/setup-check.ts';
import { formatNumber } from '../../../shared/quantity/format.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';
import { show } from '../show.ts';
import type { Scene } from '../view.ts';
import type { RemedyRow, ShareRow, VerdictRow } from './models.ts';
import { marginWords, roundedLength } from './rounded-length.ts';
import { holdingWords, verdictTitle } from './setup-words.ts';
import { unknownRow } from './unknown-words.ts';

/** Verdicts whose figures are radii of what turns: a lathe is known by the diameters it swings. */
const radial: ReadonlySet<Verdict['kind']> = new Set(['over-bed', 'in-gap', 'over-saddle', 'over-cross-slide']);

export function verdictRows(
  scene: Scene,
  setup: Setup,
  verdicts: readonly Verdict[],
  frame: PictureFrame | undefined,
): readonly VerdictRow[] {
  return verdicts.map((verdict) => rowOf(scene, setup, verdict, frame));
}

function rowOf(scene: Scene, setup: Setup, verdict: Verdict, frame: PictureFrame | undefined): VerdictRow {
  const { index } = scene;
  const unit = index.settings().lengthUnit;
  const length = (mm: number) => roundedLength(mm, unit);
  const { kind, state, margin, has, needs, band, at, carriedBy, shares, unknown, remedies } = verdict;
  const operation = verdict.operation === undefined ? undefined : index.operation(verdict.operation);
  const of = radial.has(kind) ? ' radius' : '';
  return {
    key: `${kind} ${verdict.operation ?? ''}`,
    title: verdictTitle(kind),
    state,
    operation: operation && { id: operation.id, name: operation.name },
    margin: margin === undefined ? undefined : marginWords(margin, unit),
    band: margin === undefined ? undefined : bandWords(margin, band, unit),
    has: has === undefined ? undefined : `${length(has)}${of}`,
    needs: needs === undefined ? undefined : `${length(needs)}${of}`,
    at: at === undefined ? undefined : placeWords(scene, setup.part, setup.line.axis, at),
    carriedBy: carriedBy && carrierOf(scene, setup, carriedBy),
    shares: shares.flatMap((share) => shareRow(scene, setup.part, share, unit) ?? []),
    unknown: unknown.map((one) => unknownRow(scene, setup.part, one)),
    remedies: remedies.flatMap((remedy) => remedyRow(scene, setup, remedy, unit) ?? []),
    bandMinus: band.minus,
    shown: {
      kind,
      state,
      operation: verdict.operation,
      margin,
      has,
      needs,
      at: at === undefined || frame === undefined ? undefined : inPicture(frame, setup.line.axis, at),
    },
  };
}

/** A place along the line in the picture. */
function inPicture({ along, up, back }: PictureFrame, axis: Axis, at: number): number {
  const of = [along, up, back].find((one) => one.axis === axis) ?? along;
  return of.sign * (at - of.zero);
}

/** From the worst to the best that limits make of a margin. */
function bandWords(margin: number, { minus, plus }: Verdict['band'], unit: LengthUnit): string | undefined {
  if (plus - minus < 1e-6) return undefined;
  return `${marginWords(margin + minus, unit)} to ${marginWords(margin + plus, unit)}`;
}

/** `12 mm from foot, at top face`: told from the station that lies nearest. */
function placeWords(scene: Scene, part: PartId, axis: Axis, at: number): string {
  const unit = scene.index.settings().lengthUnit;
  const drawing = scene.works.drawing.axesOf(part).find((one) => one.axis === axis);
  const placed = drawing?.datum === undefined ? [] : drawing.stations.filter(({ group }) => group === 0);
  const nearest = placed.reduce<(typeof placed)[number] | undefined>(
    (best, one) => (best === undefined || Math.abs(one.at - at) < Math.abs(best.at - at) ? one : best),
    undefined,
  );
  const name = nearest && scene.index.station(nearest.id)?.name;
  if (nearest === undefined || name === undefined) return `${show(at, 'length', unit)} along ${axis}`;
  const away = at - nearest.at;
  if (Math.abs(away) < 0.005) return `at ${name}`;
  return `${roundedLength(Math.abs(away), unit)} ${away > 0 ? 'above' : 'below'} ${name} along ${axis}`;
}

function carrierOf({ index }: Scene, setup: Setup, piece: Piece): VerdictRow['carriedBy'] {
  if (piece.is === 'fixture') {
    return { words: setup.fixtures[piece.index]?.name ?? 'a fixture', part: setup.part, body: undefined };
  }
  const body = index.body(piece.body);
  const of = piece.part === setup.part ? '' : ` of ${index.part(piece.part)?.name ?? 'another part'}`;
  return { words: `${body?.name ?? 'a body'}${of}`, part: piece.part, body: piece.body };
}

function valueWords({ works, index }: Scene, id: DimensionId): string | undefined {
  const { value, unit } = works.drawing.dimension(id);
  return value === undefined ? undefined : show(value, unit, index.settings().lengthUnit);
}

function shareRow(scene: Scene, part: PartId, share: Share, unit: LengthUnit): ShareRow | undefined {
  const { dimension: id, sensitivity } = share;
  const dimension = scene.index.dimension(id);
  if (dimension === undefined) return undefined;
  const step = kindOfMeasure(dimension.measure) === 'angle' ? '1°' : show(1, 'length', unit === 'in' ? 'in' : 'mm');
  // A step of an inch is no step: of a hundredth of it one says as much.
  const words = unit === 'in' && step !== '1°' ? inchWords(sensitivity) : stepWords(step, sensitivity, unit);
  return {
    dimension: id,
    part: dimension.part,
    name: dimension.name,
    of: dimension.part === part ? undefined : scene.index.part(dimension.part)?.name,
    value: valueWords(scene, id),
    words,
  };
}

const stepWords = (step: string, sensitivity: number, unit: LengthUnit): string =>
  `${step} more ${sensitivity < 0 ? 'takes' : 'gives'} ${roundedLength(Math.abs(sensitivity), unit)}`;

const inchWords = (sensitivity: number): string =>
  `0.01 in more ${sensitivity < 0 ? 'takes' : 'gives'} ${formatNumber(Math.abs(sensitivity) * 0.01, 4)} in`;

function remedyRow(scene: Scene, setup: Setup, remedy: Remedy, unit: LengthUnit): RemedyRow | undefined {
  const { index } = scene;
  switch (remedy.is) {
    case 'dimension': {
      const dimension = index.dimension(remedy.dimension);
      if (dimension === undefined) return undefined;
      const kind = kindOfMeasure(dimension.measure);
      const of = dimension.part === setup.part ? '' : ` of ${index.part(dimension.part)?.name ?? ''}`;
      const [from, to] = [show(remedy.from, kind, unit), show(remedy.to, kind, unit)];
      return {
        words: `Make ${dimension.name}${of} ${to} instead of ${from}`,
        act: { is: 'dimension', part: dimension.part, dimension: dimension.id, written: to },
      };
    }
    case 'machine': {
      const machine = index.machine(remedy.machine);
      return machine && { words: `Do it on ${machine.name}`, act: { is: 'machine', machine: machine.id } };
    }
    case 'holding':
      return {
        words: `Hold it otherwise: ${holdingWords[remedy.holding.as]}`,
        act: { is: 'holding', holding: remedy.holding },
      };
    case 'end-for-end':
      return { words: 'Turn it end for end', act: { is: 'end-for-end' } };
    case 'after': {
      const operation = index.operation(remedy.operation);
      return (
        operation && {
          words: `Set it up only after ${operation.name}`,
          act: { is: 'after', operation: operation.id },
        }
      );
    }
  }
}
