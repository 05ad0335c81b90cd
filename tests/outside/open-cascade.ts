import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import init, { type OpenCascadeInstance, type TopoDS_Shape } from 'replicad-opencascadejs';
import type { Axis } from '../../src/shared/build/station.ts';
import { sidesOf } from '../../src/shared/solid/outline.ts';
import type { ExactShape, Move, Vec3 } from '../../src/shared/solid/placed.ts';
import type { HandMade } from '../support/placed-bodies.ts';

/** What Open CASCADE Technology, a general modeller with true round surfaces, makes of the same bodies. */
export interface Truth {
  readonly volumeMm3: number;
  readonly areaMm2: number;
  readonly centre: Vec3;
  /** About axes through the centre: ∫(y² + z²) dV and so on. */
  readonly inertia: Vec3;
}

async function load(): Promise<OpenCascadeInstance> {
  const file = createRequire(import.meta.url).resolve('replicad-opencascadejs/wasm');
  return await init({ wasmBinary: await readFile(file) });
}

export async function openCascade(): Promise<(bodies: readonly HandMade[]) => Truth> {
  const occ = await load();
  return (bodies) => measured(occ, built(occ, bodies));
}

/** Triangles with their corners on the true surfaces, no farther from them than the deflection. */
export interface Tessellation {
  readonly vertices: Float32Array;
  readonly triangles: Uint32Array;
}

export async function openCascadeMesh(): Promise<(bodies: readonly HandMade[], deflectionMm: number) => Tessellation> {
  const occ = await load();
  return (bodies, deflectionMm) => {
    const data = occ.ReplicadMeshExtractor.extract(built(occ, bodies), deflectionMm, 0.1, true);
    const { buffer } = occ.wasmMemory;
    const vertices = new Float32Array(buffer, data.getVerticesPtr(), data.getVerticesSize()).slice();
    const triangles = new Uint32Array(buffer, data.getTrianglesPtr(), data.getTrianglesSize()).slice();
    data.delete();
    return { vertices, triangles };
  };
}

function built(occ: OpenCascadeInstance, bodies: readonly HandMade[]): TopoDS_Shape {
  let all: TopoDS_Shape | undefined;
  for (const { shape, adds = true, moves } of bodies) {
    if (!shape) continue;
    const one = shapeOf(occ, shape);
    for (const copy of moves?.map((move) => movedShape(occ, one, move)) ?? [one]) {
      if (!all) all = copy;
      else all = (adds ? new occ.BRepAlgoAPI_Fuse(all, copy) : new occ.BRepAlgoAPI_Cut(all, copy)).Shape();
    }
  }
  if (!all) throw new Error('No body has a shape.');
  return all;
}

/** u, v of the axes across, a along. */
const placeIn: Readonly<Record<Axis, (u: number, v: number, a: number) => Vec3>> = {
  X: (u, v, a) => [a, u, v],
  Y: (u, v, a) => [u, a, v],
  Z: (u, v, a) => [u, v, a],
};

function shapeOf(occ: OpenCascadeInstance, shape: ExactShape): TopoDS_Shape {
  if (shape.is === 'mesh') throw new Error('A mesh has no true surface to compare with.');
  const point = (u: number, v: number, a: number) => new occ.gp_Pnt(...placeIn[shape.axis](u, v, a));
  const direction = placeIn[shape.axis](0, 0, 1);
  const wire = new occ.BRepBuilderAPI_MakeWire();
  if (shape.is === 'extrusion') {
    const { a0, a1 } = shape;
    for (const { from, to, arc } of sidesOf(shape.outline)) {
      const [start, end] = [point(from.u, from.v, a0), point(to.u, to.v, a0)];
      if (!arc) {
        wire.Add(new occ.BRepBuilderAPI_MakeEdge(start, end).Edge());
        continue;
      }
      const half = arc.start + arc.sweep / 2;
      const middle = point(arc.centre.u + arc.radius * Math.cos(half), arc.centre.v + arc.radius * Math.sin(half), a0);
      const curve = new occ.GC_MakeArcOfCircle(start, middle, end).Value();
      wire.Add(new occ.BRepBuilderAPI_MakeEdge(curve).Edge());
    }
    const face = new occ.BRepBuilderAPI_MakeFace(wire.Wire(), true).Face();
    const [x, y, z] = direction.map((d) => d * (a1 - a0)) as [number, number, number];
    return new occ.BRepPrimAPI_MakePrism(face, new occ.gp_Vec(x, y, z)).Shape();
  }
  const { u, v, outline } = shape;
  outline.forEach((from, i) => {
    const to = outline[(i + 1) % outline.length]!;
    wire.Add(new occ.BRepBuilderAPI_MakeEdge(point(u + from.r, v, from.a), point(u + to.r, v, to.a)).Edge());
  });
  const face = new occ.BRepBuilderAPI_MakeFace(wire.Wire(), true).Face();
  const axis = new occ.gp_Ax1(point(u, v, 0), new occ.gp_Dir(...direction));
  return new occ.BRepPrimAPI_MakeRevol(face, axis).Shape();
}

function movedShape(occ: OpenCascadeInstance, shape: TopoDS_Shape, move: Move): TopoDS_Shape {
  const to = new occ.gp_Trsf();
  to.SetValues(...move);
  return new occ.BRepBuilderAPI_Transform(shape, to, true).Shape();
}

function measured(occ: OpenCascadeInstance, shape: TopoDS_Shape): Truth {
  const [volume, surface] = [new occ.GProp_GProps(), new occ.GProp_GProps()];
  occ.BRepGProp.VolumeProperties(shape, volume, 1e-9, false, false);
  occ.BRepGProp.SurfaceProperties(shape, surface, 1e-9, false);
  const centre = volume.CentreOfMass();
  // A shape that is turned inside out by its way round counts negative throughout.
  const sign = Math.sign(volume.Mass());
  const about = (x: number, y: number, z: number) =>
    sign * volume.MomentOfInertia(new occ.gp_Ax1(centre, new occ.gp_Dir(x, y, z)));
  return {
    volumeMm3: sign * volume.Mass(),
    areaMm2: surface.Mass(),
    centre: [centre.X(), centre.Y(), centre.Z()],
    inertia: [about(1, 0, 0), about(0, 1, 0), about(0, 0, 1)],
  };
}
