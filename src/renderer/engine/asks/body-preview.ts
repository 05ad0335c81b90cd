import type { BodyId, DimensionId, StationId } from '../../../shared/base/ids.ts';
import type { BodySet } from '../../../shared/build/commands/body-set.ts';
import type { BodySketchParams } from '../../../shared/build/commands/body-sketch.ts';
import { runCommand } from '../../../shared/build/commands/registry.ts';
import { type BuildDiff, invert } from '../../../shared/build/diff.ts';
import { kindOfMeasure } from '../../../shared/build/kind-of-measure.ts';
import type { BuildRecord } from '../../../shared/build/records.ts';
import { refusalWords } from '../../../shared/build/refusals.ts';
import { meshOfShape, movedMesh } from '../../../shared/solid/mesh/mesh-of-shape.ts';
import { placeBodies } from '../../../shared/solid/place-bodies.ts';
import type { PartMesh, PlacedBody } from '../../../shared/solid/placed.ts';
import { bodyProblemWords, extentWords } from '../body-words.ts';
import { valueProblemWords } from '../problem-words.ts';
import { show } from '../show.ts';
import { type Picture, pictureOf } from '../solid/picture.ts';
import type { Ask, Scene } from '../view.ts';

export type BodyDraft =
  | { readonly command: 'body-sketch'; readonly params: BodySketchParams }
  | { readonly command: 'body-set'; readonly params: BodySet };

/** A station or dimension that would be made along with the body. */
export interface MadeLine {
  readonly kind: 'station' | 'dimension';
  readonly name: string;
  /** `along X, at 60 mm`; `60 mm`. */
  readonly words: string;
  /** Its value cannot be read; `words` say why. */
  readonly unreadable?: true;
}

export interface BodyPreview {
  /** Why it would be refused, in words. */
  readonly refusal: string | undefined;
  readonly made: readonly MadeLine[];
  readonly extent: string | undefined;
  /** Why it would have no solid yet. */
  readonly problem: string | undefined;
  /** The body by itself, with its copies. */
  readonly ghost: Picture | undefined;
}

// More copies than can be told apart while they are being drawn.
const GHOSTS = 200;

/** What would be made if the form were accepted now. The drawing graph really takes it and gives it back. */
export const bodyPreviewAsk: Ask<BodyDraft, BodyPreview> = (scene, draft) => {
  const { build, drawing } = scene.works;
  let count = 0;
  // Ids that a build has once in a thousand million million: they never leave this function.
  const newId = (kind: string) => `${kind}:${String(++count).padStart(10, '0')}` as never;
  const result = runCommand(build, draft.command, draft.params as never, { newId, now: '' });
  if (!result.ok) {
    const { sentence, remedy } = refusalWords(result.error);
    return { refusal: `${sentence} ${remedy}`, made: [], extent: undefined, problem: undefined, ghost: undefined };
  }
  const { diff } = result.value;
  drawing.update(diff);
  try {
    return previewOf(scene, diff, draft);
  } finally {
    drawing.update(invert(diff));
  }
};

function previewOf(scene: Scene, diff: BuildDiff, draft: BodyDraft): BodyPreview {
  const { build, drawing } = scene.works;
  const unit = scene.index.settings().lengthUnit;
  const changed = new Map<string, BuildRecord>();
  for (const record of [...diff.updated.map(([, to]) => to), ...diff.added]) changed.set(record.id, record);
  const get = (id: BuildRecord['id']) => changed.get(id) ?? build.get(id);
  const wanted = draft.command === 'body-set' ? draft.params.changes[0]?.body : undefined;
  const body = [...changed.values()].find((one) => one.kind === 'body' && (wanted === undefined || one.id === wanted));
  const record = body ?? (wanted && scene.index.body(wanted as BodyId));
  const made = diff.added.flatMap((one): readonly MadeLine[] => {
    if (one.kind === 'station') {
      const axis = drawing.axesOf(one.part).find((each) => each.axis === one.axis);
      const at = axis?.stations.find(({ id }) => id === one.id);
      const place =
        one.datum || at?.group !== 0 || axis?.datum === undefined
          ? one.datum
            ? 'datum'
            : 'not placed yet'
          : `at ${show(at.at, 'length', unit)}`;
      return [{ kind: 'station', name: one.name, words: `along ${one.axis}, ${place}` }];
    }
    if (one.kind !== 'dimension') return [];
    const { value, problem } = drawing.dimension(one.id);
    if (problem?.why === 'text')
      return [{ kind: 'dimension', name: one.name, words: valueProblemWords(scene, problem), unreadable: true }];
    const words = value === undefined ? 'no value' : show(value, kindOfMeasure(one.measure), unit);
    return [{ kind: 'dimension', name: one.name, words }];
  });
  if (record?.kind !== 'body')
    return { refusal: undefined, made, extent: undefined, problem: undefined, ghost: undefined };
  const nameOf = (id: StationId | DimensionId): string => {
    const one = get(id);
    return one !== undefined && 'name' in one ? one.name : '';
  };
  const [placed] = placeBodies(record.part, { bodies: [record], get }, drawing);
  return {
    refusal: undefined,
    made,
    extent: placed && extentWords(placed, unit),
    problem: placed?.problem && bodyProblemWords(placed.problem, nameOf),
    ghost: placed && ghostOf(placed),
  };
}

function ghostOf({ shape, moves, record }: PlacedBody): Picture | undefined {
  if (shape === undefined) return undefined;
  const { mesh, facets } = meshOfShape(shape);
  const copies = moves.slice(0, GHOSTS).map((move) => movedMesh(mesh, move));
  const corners = mesh.vertices.length / 3;
  const count = mesh.triangles.length / 3;
  const whole: PartMesh = {
    vertices: new Float32Array(copies.length * mesh.vertices.length),
    triangles: new Uint32Array(copies.length * mesh.triangles.length),
    bodyOf: new Uint16Array(copies.length * count),
    faceOf: new Uint32Array(copies.length * count),
    bodies: [record.id],
  };
  copies.forEach((copy, i) => {
    whole.vertices.set(copy.vertices, i * mesh.vertices.length);
    whole.triangles.set(
      copy.triangles.map((corner) => corner + i * corners),
      i * mesh.triangles.length,
    );
    whole.faceOf.set(
      mesh.facetOf.map((facet) => facets[facet]?.face ?? 0),
      i * count,
    );
  });
  return pictureOf(whole);
}
