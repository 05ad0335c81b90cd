import init, { type TopoDS_Shape } from 'replicad-opencascadejs';
import { describe, expect, test } from 'vitest';
import { readSolid } from '../../src/main/files/solids/read-solid.ts';

/*
 * Files written by Open CASCADE (8, `replicad-opencascadejs`), a geometry kernel apart from the older one that reads them
 * here, and the volumes and centres that it works out itself from the exact surfaces. Those of the box and the cylinder
 * are also known by hand; they show that its figures are what they are taken for.
 */
const nothing = () => undefined;
// The writer tells at length what it does.
const oc = await init({ print: nothing, printErr: nothing });

const progress = () => new oc.Message_ProgressRange();
const at = (x: number, y: number, z: number) => new oc.gp_Pnt(x, y, z);
const along = (x: number, y: number, z: number) => new oc.gp_Dir(x, y, z);
const cylinder = (place: [number, number, number], axis: [number, number, number], radius: number, height: number) =>
  new oc.BRepPrimAPI_MakeCylinder(new oc.gp_Ax2(at(...place), along(...axis)), radius, height).Shape();
const box = (x: number, y: number, z: number) => new oc.BRepPrimAPI_MakeBox(x, y, z).Shape();
const cut = (from: TopoDS_Shape, what: TopoDS_Shape) => new oc.BRepAlgoAPI_Cut(from, what, progress()).Shape();
const unite = (a: TopoDS_Shape, b: TopoDS_Shape) => new oc.BRepAlgoAPI_Fuse(a, b, progress()).Shape();

function volumeOf(shape: TopoDS_Shape): number {
  const found = new oc.GProp_GProps();
  oc.BRepGProp.VolumeProperties(shape, found, false, false, false);
  return found.Mass();
}

function fileOf(shape: TopoDS_Shape, unit = 'MM'): Uint8Array {
  const writer = new oc.STEPControl_Writer();
  oc.Interface_Static.SetCVal('write.step.unit', unit);
  writer.Transfer(shape, oc.STEPControl_StepModelType.STEPControl_AsIs, true, progress());
  writer.Write('/part.step');
  return oc.FS.readFile('/part.step');
}

/** A foot with four holes, a hub with a bore and a hole across both. */
function bracket(): TopoDS_Shape {
  let shape = unite(box(90, 56, 24), cylinder([45, 28, 24], [0, 0, 1], 22, 46));
  shape = cut(shape, cylinder([45, 28, -1], [0, 0, 1], 14, 80));
  shape = cut(shape, cylinder([45, -1, 52], [0, 1, 0], 5, 60));
  for (const x of [10, 80]) for (const y of [10, 46]) shape = cut(shape, cylinder([x, y, -1], [0, 0, 1], 4.25, 30));
  return shape;
}

async function taken(bytes: Uint8Array) {
  const read = await readSolid('part.step', bytes);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

describe('solids written by another kernel', () => {
  test.each([
    // π r² h; inscribed in steps of 0.1 rad or finer a cylinder loses less than 0.17 %, and the deviation asked for less still.
    ['a box', () => box(40, 30, 20), 24_000, 1e-9],
    ['a cylinder', () => cylinder([5, 6, 7], [1, 2, 2], 25, 60), Math.PI * 625 * 60, 3e-4],
    ['a ball', () => new oc.BRepPrimAPI_MakeSphere(20).Shape(), (4 / 3) * Math.PI * 8000, 1e-3],
    ['a ring', () => new oc.BRepPrimAPI_MakeTorus(40, 8).Shape(), 2 * Math.PI ** 2 * 40 * 64, 1e-3],
    ['a bracket', bracket, undefined, 5e-5],
  ] as const)('%s has the volume that the other works out', async (_, make, byHand, within) => {
    const shape = make();
    const theirs = volumeOf(shape);
    if (byHand !== undefined) expect(theirs / byHand).toBeCloseTo(1, 6);
    const solid = await taken(fileOf(shape));
    expect(Math.abs(solid.volume / theirs - 1)).toBeLessThan(within);
    expect(solid).toMatchObject({ form: 'step', unit: 'mm', shells: 1 });
  });

  test('a file in inches comes in at its true size', async () => {
    const bytes = fileOf(bracket(), 'INCH');
    expect(new TextDecoder().decode(bytes)).toContain("'INCH'");
    const solid = await taken(bytes);
    expect(solid.unit).toBe('mm');
    expect(Math.abs(solid.volume / volumeOf(bracket()) - 1)).toBeLessThan(5e-5);
    [0, 0, 0, 90, 56, 70].forEach((mm, i) => {
      expect([...solid.min, ...solid.max][i]).toBeCloseTo(mm, 4);
    });
  });

  test('a hollow keeps its cavity', async () => {
    const shape = cut(box(60, 60, 60), new oc.BRepPrimAPI_MakeSphere(at(30, 30, 30), 20).Shape());
    const solid = await taken(fileOf(shape));
    expect(solid.shells).toBe(2);
    expect(Math.abs(solid.volume / volumeOf(shape) - 1)).toBeLessThan(5e-4);
  });
});

describe('files that give no solid', () => {
  const bytes = fileOf(box(40, 30, 20));
  const problem = async (given: Uint8Array) => {
    const read = await readSolid('part.step', given);
    return read.ok ? read.value : read.error;
  };

  test('one that breaks off says at which line', async () => {
    const short = bytes.slice(0, 3_000);
    const lines = new TextDecoder().decode(short).split('\n').length;
    // The end of a file counts as a line of its own.
    expect(await problem(short)).toMatchObject({ code: 'unreadable', place: `line ${lines + 1}` });
  });
  test('one whose data are missing', async () => {
    const text = new TextDecoder().decode(bytes).replace(/DATA;[\s\S]*ENDSEC;/, 'DATA;\nENDSEC;');
    expect(await problem(new TextEncoder().encode(text))).toMatchObject({ code: 'unreadable' });
  });
  test('a sheet without thickness is open', async () => {
    const shell = new oc.BRepPrimAPI_MakeBox(40, 30, 20).TopFace();
    expect(await problem(fileOf(shell))).toMatchObject({ code: 'open' });
  });
  test('damaged ones are refused in words, or sound', async () => {
    for (let i = 0; i < 12; i++) {
      const spoiled = bytes.slice();
      for (let k = 0; k < 4; k++)
        spoiled[1_500 + ((i * 7919 + k * 104_729) % (bytes.length - 1_500))] = 48 + ((i + k) % 10);
      const outcome = await problem(spoiled);
      expect('sentence' in outcome ? outcome.sentence : outcome.mesh.triangles.length).toBeTruthy();
    }
  });
});
