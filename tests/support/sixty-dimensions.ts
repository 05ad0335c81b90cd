import type { BodyId, DimensionId, PartId, StationId } from '../../src/shared/base/ids.ts';
import type { Body, Repeat, Shape } from '../../src/shared/build/body.ts';
import { defaultDimension, type Source } from '../../src/shared/build/dimension.ts';
import { defaultPart } from '../../src/shared/build/part.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import { defaultSettings } from '../../src/shared/build/settings.ts';
import { type Axis, defaultStation, type StationForm } from '../../src/shared/build/station.ts';

/** An invented casting with more than sixty dimensions of every kind: a headstock-like body on a flanged foot. */
export function sixtyDimensions(): { readonly part: PartId; readonly records: readonly BuildRecord[] } {
  const part = {
    ...defaultPart('part:headstock' as PartId, 'Spindle head', 1),
    number: 'WK-07-112',
    material: 'grey iron, class 20',
  };
  const stations: BuildRecord[] = [];
  const dimensions: BuildRecord[] = [];
  const bodies: BuildRecord[] = [];
  const sources: readonly Source[] = ['drawn', 'drawn', 'drawn', 'measured', 'drawn', 'assumed', 'drawn', 'derived'];
  const limits = ['', '±0.1', '', '+0.2/-0', '', ''];
  let count = 0;
  const station = (axis: Axis, name: string, form: StationForm = 'face', datum = false): StationId => {
    const id = `station:${axis}-${name.replaceAll(' ', '-')}` as StationId;
    stations.push({ ...defaultStation(id, part.id, axis, name, stations.length + 1), form, datum });
    return id;
  };
  const add = (name: string, measure: Parameters<typeof defaultDimension>[3], value: string): DimensionId => {
    const id = `dimension:${name.replaceAll(' ', '-')}` as DimensionId;
    const i = count++;
    dimensions.push({
      ...defaultDimension(id, part.id, name, measure, i + 1),
      value,
      source: sources[i % sources.length]!,
      limits: measure.type === 'between' ? limits[i % limits.length]! : '',
    });
    return id;
  };
  /** A station so far from another, with the dimension that says so. */
  const from = (start: StationId, axis: Axis, name: string, value: string, form: StationForm = 'face'): StationId => {
    const to = station(axis, name, form);
    add(`${axis} of ${name}`, { type: 'between', from: start, to }, value);
    return to;
  };
  const size = (form: 'diameter' | 'radius' | 'length' | 'angle' | 'thread' | 'count', name: string, value: string) =>
    add(name, { type: 'size', form }, value);
  const body = (
    name: string,
    shape: Shape,
    adds: boolean,
    repeats: readonly Repeat[] = [],
    finish: Body['finish'] = 'as cast',
  ) =>
    bodies.push({
      kind: 'body',
      id: `body:${name.replaceAll(' ', '-')}` as BodyId,
      part: part.id,
      name,
      adds,
      finish,
      shape,
      repeats: [...repeats],
      note: '',
      order: bodies.length + 1,
    });

  const x0 = station('X', 'left end', 'face', true);
  const y0 = station('Y', 'middle', 'centreline', true);
  const z0 = station('Z', 'underside', 'face', true);
  const xFoot = from(x0, 'X', 'right end of foot', '240');
  const xWallA = from(x0, 'X', 'left wall outside', '20');
  const xWallAIn = from(xWallA, 'X', 'left wall inside', '18');
  const xWallB = from(xFoot, 'X', 'right wall outside', '-25');
  const xWallBIn = from(xWallB, 'X', 'right wall inside', '-22');
  const xBossA = from(xWallA, 'X', 'left boss face', '-12');
  const xBossB = from(xWallB, 'X', 'right boss face', '14');
  const xSlot = from(x0, 'X', 'first slot', '70', 'centreline');
  const xSlotB = from(xSlot, 'X', 'second slot', '36', 'centreline');
  const xOil = from(xWallA, 'X', 'oil hole', '52', 'centreline');
  const xRib = from(xWallB, 'X', 'rib', '-61', 'centreline');
  const yFront = from(y0, 'Y', 'front of foot', '-65');
  const yBack = from(y0, 'Y', 'back of foot', '65');
  const yBodyFront = from(y0, 'Y', 'front of body', '-42');
  const yBodyBack = from(y0, 'Y', 'back of body', '42');
  const yCoreFront = from(yBodyFront, 'Y', 'front of core', '9');
  const yCoreBack = from(yBodyBack, 'Y', 'back of core', '-9');
  const ySlot = from(yFront, 'Y', 'slots', '12', 'centreline');
  const yBolt = from(yBack, 'Y', 'foot bolts', '-12', 'centreline');
  const xBolt = from(x0, 'X', 'first foot bolt', '28', 'centreline');
  const zFoot = from(z0, 'Z', 'top of foot', '18');
  const zBody = from(z0, 'Z', 'top of body', '168');
  const zAxis = from(z0, 'Z', 'spindle axis', '112', 'centreline');
  const zCore = from(zBody, 'Z', 'top of core', '-10');
  const zLid = from(zBody, 'Z', 'lid rebate', '-4');
  const zTee = from(z0, 'Z', 'tee groove', '7');
  const yTeeA = from(y0, 'Y', 'groove front', '-8');
  const yTeeB = from(yTeeA, 'Y', 'groove back', '16');
  const zLock = from(zAxis, 'Z', 'locking screw', '38', 'centreline');
  const xLidA = from(x0, 'X', 'lid left', '32');
  const xLidB = from(xLidA, 'X', 'lid right', '171');
  const yLidA = from(yBodyFront, 'Y', 'lid front', '6');
  const yLidB = from(yBodyBack, 'Y', 'lid back', '-6');
  const zRib = from(zFoot, 'Z', 'rib top', '40');
  const xLock = from(xWallA, 'X', 'lock boss depth', '30');

  const block = (x: [StationId, StationId], y: [StationId, StationId], z: [StationId, StationId]): Shape => ({
    type: 'block',
    x,
    y,
    z,
  });
  const footRadius = size('radius', 'foot corners', '10');
  body(
    'foot',
    { type: 'pocket', axis: 'Z', ends: [z0, zFoot], from: [x0, yFront], to: [xFoot, yBack], radius: footRadius },
    true,
  );
  body('body', block([xWallA, xWallB], [yBodyFront, yBodyBack], [zFoot, zBody]), true);
  const left = size('diameter', 'left boss', '84');
  body('left boss', { type: 'cylinder', axis: 'X', ends: [xBossA, xWallA], centre: [y0, zAxis], diameter: left }, true);
  const right = size('diameter', 'right boss', '78');
  body(
    'right boss',
    { type: 'cylinder', axis: 'X', ends: [xWallB, xBossB], centre: [y0, zAxis], diameter: right },
    true,
  );
  body(
    'rib',
    {
      type: 'rib',
      axis: 'X',
      at: xRib,
      thickness: size('length', 'rib thickness', '12'),
      corners: [
        [yFront, zFoot],
        [yBodyFront, zFoot],
        [yBodyFront, zRib],
      ],
    },
    true,
  );
  body('core', block([xWallAIn, xWallBIn], [yCoreFront, yCoreBack], [z0, zCore]), false, [], 'cored');
  body(
    'lid rebate',
    {
      type: 'pocket',
      axis: 'Z',
      ends: [zLid, zBody],
      from: [xLidA, yLidA],
      to: [xLidB, yLidB],
      radius: size('radius', 'rebate corners', '6'),
    },
    false,
    [],
    'machined',
  );
  const bore = size('diameter', 'left bore', '52');
  body(
    'left bore',
    {
      type: 'hole',
      axis: 'X',
      from: xBossA,
      to: xWallAIn,
      centre: [y0, zAxis],
      diameter: bore,
      counterbore: { diameter: size('diameter', 'left seat', '62'), depth: size('length', 'left seat depth', '15') },
    },
    false,
    [],
    'machined',
  );
  body(
    'right bore',
    {
      type: 'hole',
      axis: 'X',
      from: xBossB,
      to: xWallBIn,
      centre: [y0, zAxis],
      diameter: size('diameter', 'right bore', '47'),
    },
    false,
    [],
    'machined',
  );
  body(
    'cover screws',
    {
      type: 'hole',
      axis: 'X',
      from: xBossA,
      to: xLock,
      centre: [y0, zAxis],
      diameter: size('thread', 'cover thread', 'M6'),
      point: size('angle', 'drill point', '118'),
    },
    false,
    [
      {
        type: 'circle',
        axis: 'X',
        centre: [y0, zAxis],
        count: size('count', 'cover screws', '6'),
        circle: size('diameter', 'cover circle', '73'),
        start: size('angle', 'first cover screw', '30'),
      },
    ],
    'machined',
  );
  body(
    'foot bolts',
    {
      type: 'hole',
      axis: 'Z',
      from: zFoot,
      to: z0,
      centre: [xBolt, yBolt],
      diameter: size('diameter', 'foot bolt', '11'),
      counterbore: { diameter: size('diameter', 'spot face', '22'), depth: size('length', 'spot depth', '1.5') },
    },
    false,
    [{ type: 'row', axis: 'X', count: size('count', 'foot bolts', '3'), pitch: size('length', 'bolt pitch', '92') }],
    'machined',
  );
  body(
    'slot',
    {
      type: 'slot',
      axis: 'Z',
      ends: [z0, zFoot],
      centres: [
        [xSlot, ySlot],
        [xSlotB, ySlot],
      ],
      width: size('length', 'slot width', '13'),
    },
    false,
    [],
    'machined',
  );
  body(
    'oil hole',
    {
      type: 'hole',
      axis: 'Z',
      from: zBody,
      to: zCore,
      centre: [xOil, y0],
      diameter: size('diameter', 'oil hole', '8'),
      countersink: { diameter: size('diameter', 'oil sink', '14'), angle: size('angle', 'oil sink angle', '90') },
    },
    false,
    [],
    'machined',
  );
  body('tee groove', block([x0, xFoot], [yTeeA, yTeeB], [z0, zTee]), false, [], 'machined');
  body(
    'locking screw',
    {
      type: 'hole',
      axis: 'Y',
      from: yBodyFront,
      to: yCoreFront,
      centre: [xOil, zLock],
      diameter: size('thread', 'locking thread', 'M10x1'),
    },
    false,
    [],
    'machined',
  );
  body(
    'drain',
    {
      type: 'hole',
      axis: 'Z',
      from: zFoot,
      to: z0,
      centre: [xRib, ySlot],
      diameter: size('diameter', 'drain', '9'),
      countersink: { diameter: size('diameter', 'drain mouth', '15'), angle: size('angle', 'drain mouth angle', '90') },
    },
    false,
    [],
    'machined',
  );
  return { part: part.id, records: [defaultSettings('Spindle works'), part, ...stations, ...dimensions, ...bodies] };
}
