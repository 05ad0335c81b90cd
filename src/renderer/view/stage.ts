import {
  AmbientLight,
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshLambertMaterial,
  OrthographicCamera,
  Raycaster,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import type { Box3, Look } from './camera.ts';
import { directions } from './camera.ts';

/** A solid as the stage takes it; see the engine's picture. */
export interface StagePicture {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly triangles: Uint32Array;
  readonly bodyOf: Uint16Array;
  readonly edges: Float32Array;
  readonly bodies: readonly string[];
}

/** Colours as the page writes them. */
export interface StageColours {
  readonly face: string;
  readonly edge: string;
  readonly lit: string;
  readonly also: string;
  readonly ghost: string;
}

export interface Stage {
  show(picture: StagePicture | undefined): void;
  /** Something that is not there yet, seen through what is. */
  ghost(picture: StagePicture | undefined): void;
  /** Bodies that are picked out, and those that are lit along with them. */
  light(bodies: ReadonlySet<string>, also: ReadonlySet<string>): void;
  colours(colours: StageColours): void;
  size(width: number, height: number, pixelRatio: number): void;
  look(look: Look): void;
  /** The box about all that is shown; undefined when nothing is. */
  box(): Box3 | undefined;
  /** The body at a place, in pixels from the middle of the picture, to the right and down. */
  pick(x: number, y: number): string | undefined;
  dispose(): void;
}

/** The page's own sign that the picture of a solid cannot be shown on this machine. */
class NoPicture extends Error {
  override readonly name = 'NoPicture';
}

/**
 * Puts a solid on a canvas. It draws when something changed and not otherwise.
 *
 * @param onLost called when the machine takes the drawing surface away.
 * @throws NoPicture where WebGL is missing.
 */
export function createStage(canvas: HTMLCanvasElement, onLost: () => void): Stage {
  let renderer: WebGLRenderer;
  try {
    renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, powerPreference: 'low-power' });
  } catch (error) {
    throw new NoPicture(String(error));
  }
  const scene = new Scene();
  const camera = new OrthographicCamera();
  const sky = new AmbientLight('#ffffff', 1.1);
  const lamp = new DirectionalLight('#ffffff', 2.1);
  scene.add(sky, lamp, lamp.target);
  // Faces are pushed back a little so that the edges upon them are not swallowed.
  const face = new MeshLambertMaterial({ polygonOffset: true, polygonOffsetFactor: 2, polygonOffsetUnits: 2 });
  const lit = new MeshLambertMaterial({ polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 });
  const also = new MeshLambertMaterial({ polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 });
  const edge = new LineBasicMaterial();
  const ghostFace = new MeshLambertMaterial({ transparent: true, opacity: 0.34, depthWrite: false, depthTest: false });
  const ghostEdge = new LineBasicMaterial({ depthTest: false, transparent: true });
  const solid = new Mesh(new BufferGeometry(), face);
  const outlines = new LineSegments(new BufferGeometry(), edge);
  const litMesh = new Mesh(new BufferGeometry(), lit);
  const alsoMesh = new Mesh(new BufferGeometry(), also);
  const ghost = new Mesh(new BufferGeometry(), ghostFace);
  const ghostLines = new LineSegments(new BufferGeometry(), ghostEdge);
  ghost.renderOrder = 1;
  ghostLines.renderOrder = 2;
  const things = [solid, outlines, litMesh, alsoMesh, ghost, ghostLines];
  for (const thing of things) {
    // Everything is in sight nearly always; and bounds would have to be worked out for each new solid.
    thing.frustumCulled = false;
    thing.visible = false;
    scene.add(thing);
  }
  let shown: StagePicture | undefined;
  let ghosted: StagePicture | undefined;
  let chosen: readonly [ReadonlySet<string>, ReadonlySet<string>] = [new Set(), new Set()];
  let now: Look | undefined;
  let half = { width: 1, height: 1 };
  let frame = 0;
  let gone = false;
  const draw = () => {
    if (frame !== 0 || gone) return;
    frame = requestAnimationFrame(() => {
      frame = 0;
      renderer.render(scene, camera);
    });
  };
  const place = () => {
    if (now === undefined) return;
    const { up, towards } = directions(now);
    const box = boxOf(shown, ghosted);
    const [x, y, z] = now.middle;
    const size = box === undefined ? 1 : Math.hypot(...box.max.map((at, k) => at - box.min[k]!));
    const away = box === undefined ? 1 : farthest(box, now.middle) + size;
    camera.position.set(x + towards[0] * away, y + towards[1] * away, z + towards[2] * away);
    camera.up.set(up[0], up[1], up[2]);
    camera.lookAt(new Vector3(x, y, z));
    camera.left = -half.width * now.mmPerPixel;
    camera.right = half.width * now.mmPerPixel;
    camera.top = half.height * now.mmPerPixel;
    camera.bottom = -half.height * now.mmPerPixel;
    camera.near = 0;
    camera.far = 2 * away;
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
    // The lamp stands over the reader's left shoulder, as draughtsmen have it.
    lamp.target.position.set(x, y, z);
    lamp.position.copy(camera.position);
    lamp.position.addScaledVector(new Vector3(-1, 0, 0).applyQuaternion(camera.quaternion), away * 0.5);
    lamp.position.addScaledVector(new Vector3(0, 1, 0).applyQuaternion(camera.quaternion), away * 0.7);
    draw();
  };
  const choose = () => {
    subset(litMesh, shown, chosen[0]);
    subset(alsoMesh, shown, chosen[1]);
    draw();
  };
  const onContextLost = (event: Event) => {
    event.preventDefault();
    onLost();
  };
  canvas.addEventListener('webglcontextlost', onContextLost);
  const ray = new Raycaster();
  return {
    show(picture) {
      shown = picture;
      fill(solid, outlines, picture);
      choose();
      place();
    },
    ghost(picture) {
      ghosted = picture;
      fill(ghost, ghostLines, picture);
      place();
      draw();
    },
    light(bodies, others) {
      chosen = [bodies, others];
      choose();
    },
    colours(colours) {
      face.color = new Color(colours.face);
      edge.color = new Color(colours.edge);
      lit.color = new Color(colours.lit);
      also.color = new Color(colours.also);
      ghostFace.color = new Color(colours.ghost);
      ghostEdge.color = new Color(colours.ghost);
      draw();
    },
    size(width, height, pixelRatio) {
      half = { width: width / 2, height: height / 2 };
      renderer.setPixelRatio(pixelRatio);
      renderer.setSize(width, height, false);
      place();
      // A canvas that changes its size is blank until it is drawn on.
      renderer.render(scene, camera);
    },
    look(look) {
      now = look;
      place();
    },
    box: () => boxOf(shown, ghosted),
    pick(x, y) {
      if (shown === undefined) return undefined;
      ray.setFromCamera(new Vector2(x / half.width, -y / half.height), camera);
      const [hit] = ray.intersectObject(solid, false);
      return hit?.faceIndex == null ? undefined : shown.bodies[shown.bodyOf[hit.faceIndex]!];
    },
    dispose() {
      gone = true;
      cancelAnimationFrame(frame);
      canvas.removeEventListener('webglcontextlost', onContextLost);
      for (const thing of things) thing.geometry.dispose();
      for (const material of [face, lit, also, edge, ghostFace, ghostEdge]) material.dispose();
      renderer.dispose();
    },
  };
}

function fill(mesh: Mesh, lines: LineSegments, picture: StagePicture | undefined): void {
  mesh.geometry.dispose();
  lines.geometry.dispose();
  mesh.visible = picture !== undefined;
  lines.visible = picture !== undefined;
  mesh.geometry = new BufferGeometry();
  lines.geometry = new BufferGeometry();
  if (picture === undefined) return;
  mesh.geometry.setAttribute('position', new BufferAttribute(picture.positions, 3));
  mesh.geometry.setAttribute('normal', new BufferAttribute(picture.normals, 3));
  mesh.geometry.setIndex(new BufferAttribute(picture.triangles, 1));
  lines.geometry.setAttribute('position', new BufferAttribute(picture.edges, 3));
}

/** Shows the triangles of some bodies once more, in another colour. They have corners of their own: shared ones would be freed twice. */
function subset(mesh: Mesh, picture: StagePicture | undefined, bodies: ReadonlySet<string>): void {
  mesh.geometry.dispose();
  mesh.geometry = new BufferGeometry();
  const wanted = new Set<number>();
  picture?.bodies.forEach((body, i) => {
    if (bodies.has(body)) wanted.add(i);
  });
  mesh.visible = wanted.size > 0;
  if (picture === undefined || wanted.size === 0) return;
  let count = 0;
  for (const body of picture.bodyOf) if (wanted.has(body)) count++;
  const positions = new Float32Array(count * 9);
  const normals = new Float32Array(count * 9);
  let at = 0;
  picture.triangles.forEach((corner, i) => {
    if (!wanted.has(picture.bodyOf[Math.floor(i / 3)]!)) return;
    positions.set(picture.positions.subarray(corner * 3, corner * 3 + 3), at);
    normals.set(picture.normals.subarray(corner * 3, corner * 3 + 3), at);
    at += 3;
  });
  mesh.geometry.setAttribute('position', new BufferAttribute(positions, 3));
  mesh.geometry.setAttribute('normal', new BufferAttribute(normals, 3));
}

const boxes = new WeakMap<StagePicture, Box3>();

function boxOf(...pictures: readonly (StagePicture | undefined)[]): Box3 | undefined {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const picture of pictures) {
    if (picture === undefined) continue;
    const box = boxes.get(picture) ?? boxOfPositions(picture.positions);
    boxes.set(picture, box);
    for (let k = 0; k < 3; k++) {
      min[k] = Math.min(min[k]!, box.min[k]!);
      max[k] = Math.max(max[k]!, box.max[k]!);
    }
  }
  return min[0] <= max[0] ? { min, max } : undefined;
}

function boxOfPositions(positions: Float32Array): Box3 {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i++) {
    const k = i % 3;
    min[k] = Math.min(min[k]!, positions[i]!);
    max[k] = Math.max(max[k]!, positions[i]!);
  }
  return { min, max };
}

/** Distance from a point to the farthest corner of a box. */
function farthest({ min, max }: Box3, point: readonly number[]): number {
  return Math.hypot(...[0, 1, 2].map((k) => Math.max(Math.abs(point[k]! - min[k]!), Math.abs(point[k]! - max[k]!))));
}
