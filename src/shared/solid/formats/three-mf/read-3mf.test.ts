import { strToU8, zipSync } from 'fflate';
import { JSDOM } from 'jsdom';
import { ThreeMFLoader } from 'three/examples/jsm/loaders/3MFLoader.js';
import { describe, expect, test, vi } from 'vitest';
import { apart, boxMesh, meshVolume, ringMesh } from '../../../../../tests/support/sample-meshes.ts';
import { mendMesh } from '../mend-mesh.ts';
import { read3mf } from './read-3mf.ts';
import { write3mf } from './write-3mf.ts';

const CORE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';
const RELATION = 'http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel';

const pack = (files: Readonly<Record<string, string>>) =>
  zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])));
const relations = (target: string) =>
  `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="a" Type="${RELATION}" Target="${target}"/></Relationships>`;
const box = boxMesh([0, 0, 0], [4, 3, 2]);
const meshXml = [
  '<mesh><vertices>',
  ...[...box.vertices].flatMap((x, i, all) =>
    i % 3 === 0 ? [`<vertex x="${x}" y="${all[i + 1]}" z="${all[i + 2]}"/>`] : [],
  ),
  '</vertices><triangles>',
  ...[...box.triangles].flatMap((a, i, all) =>
    i % 3 === 0 ? [`<triangle v1="${a}" v2="${all[i + 1]}" v3="${all[i + 2]}"/>`] : [],
  ),
  '</triangles></mesh>',
].join('');
const model = (body: string, attributes = 'unit="millimeter"') =>
  `<?xml version="1.0"?><!-- a box --><model ${attributes} xmlns="${CORE}">${body}</model>`;
const one = model(`<resources><object id="1">${meshXml}</object></resources><build><item objectid="1"/></build>`);
const packed = (text: string, more: Readonly<Record<string, string>> = {}) =>
  pack({ '_rels/.rels': relations('/3D/3dmodel.model'), '3D/3dmodel.model': text, ...more });

const taken = (bytes: Uint8Array) => {
  const read = read3mf(bytes);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
};
const problem = (bytes: Uint8Array) => {
  const read = read3mf(bytes);
  if (read.ok) throw new Error('it was taken');
  return read.error;
};

describe('what is written', () => {
  const ring = ringMesh(48, 10, 20, 5);
  const bytes = write3mf(apart(ring), 'ring & "washer" <A>');

  test('comes back closed, in millimetres, to the last digit', () => {
    const read = taken(bytes);
    expect(read.unit).toBe('mm');
    const sound = mendMesh(read.mesh, String);
    expect(sound.ok && sound.value.remarks).toEqual([]);
    expect(sound.ok && sound.value.volume).toBeCloseTo(meshVolume(ring), 9);
    expect(read.mesh.vertices).toHaveLength(ring.vertices.length);
  });
  test('another reader finds the same', () => {
    vi.stubGlobal('DOMParser', new JSDOM('').window.DOMParser);
    const group = new ThreeMFLoader().parse(bytes.slice().buffer);
    let volume = 0;
    group.traverse(({ geometry }) => {
      if (geometry === undefined) return;
      const { position } = geometry.attributes;
      const triangles = geometry.index?.array ?? Array.from({ length: position.count }, (_, i) => i);
      volume += meshVolume({ vertices: Float64Array.from(position.array), triangles: Uint32Array.from(triangles) });
    });
    vi.unstubAllGlobals();
    // That reader keeps places in single precision.
    expect(volume / meshVolume(ring)).toBeCloseTo(1, 5);
  });
  test('is the same whenever it is written', () => {
    expect(write3mf(apart(ring), 'ring & "washer" <A>')).toEqual(bytes);
  });
});

describe('what others write', () => {
  test('a plain model', () => {
    expect(meshVolume(taken(packed(one)).mesh)).toBeCloseTo(24, 12);
  });
  test.each([
    ['inch', 'in', 24],
    ['foot', 'ft', 24],
    ['centimeter', 'cm', 24],
    ['meter', 'm', 24],
    ['micron', 'mm', 24e-9],
  ])('in %s', (unit, ours, volume) => {
    const read = taken(packed(one.replace('millimeter', unit)));
    expect(read.unit).toBe(ours);
    expect(meshVolume(read.mesh) / volume).toBeCloseTo(1, 9);
  });
  test('without a word on the unit, millimetres are meant', () => {
    expect(taken(packed(one.replace('unit="millimeter"', ''))).unit).toBe('mm');
  });
  test('objects of objects, moved, turned and mirrored', () => {
    const text = model(`<resources><object id="1">${meshXml}</object><object id="2"><components>
      <component objectid="1" transform="0 1 0 -1 0 0 0 0 1 10 0 0"/>
      <component objectid="1" transform="-1 0 0 0 1 0 0 0 1 0 0 0"/>
    </components></object></resources><build><item objectid="2" transform="2 0 0 0 2 0 0 0 2 100 0 0"/></build>`);
    const { mesh } = taken(packed(text));
    expect(meshVolume(mesh)).toBeCloseTo(2 * 8 * 24, 9);
    const xs = [...mesh.vertices].filter((_, i) => i % 3 === 0);
    // The first is turned by 90° about Z and lies from x 7 to 10, the second from −4 to 0; twice the size, 100 further.
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([92, 120]);
  });
  test('a prefix for the namespace, and elements of other namespaces between', () => {
    const text = one
      .replaceAll(/<(\/?)(\w)/g, '<$1c:$2')
      .replace('xmlns=', 'xmlns:c=')
      .replace('<c:build>', '<x:mesh xmlns:x="urn:other"><x:vertex x="a"/></x:mesh><c:build>')
      .replace('<c:?xml', '<?xml');
    expect(meshVolume(taken(packed(text)).mesh)).toBeCloseTo(24, 12);
  });
  test('a model of another name, and one that refers to another model', () => {
    const production = 'http://schemas.microsoft.com/3dmanufacturing/production/2015/06';
    const root = model(
      '<resources><object id="9"><components><component objectid="1" p:path="/3D/Objects/Part.model"/></components></object></resources><build><item objectid="9"/></build>',
      `unit="inch" requiredextensions="p" xmlns:p="${production}"`,
    );
    const files = {
      '_rels/.rels': relations('/Models/Root.model'),
      'Models/Root.model': root,
      '3D/Objects/part.model': one,
    };
    const read = taken(pack(files));
    expect(read.unit).toBe('in');
    expect(meshVolume(read.mesh)).toBeCloseTo(24, 12);
  });
  test('UTF-16', () => {
    const text = `\uFEFF${one}`;
    const units = Uint16Array.from(text, (letter) => letter.charCodeAt(0));
    const bytes = zipSync({ '3D/3dmodel.model': new Uint8Array(units.buffer) });
    expect(meshVolume(taken(bytes).mesh)).toBeCloseTo(24, 12);
  });
  test('an object that is only support is left out, and said so', () => {
    const two = model(
      `<resources><object id="1">${meshXml}</object><object id="2" type="support">${meshXml}</object></resources><build><item objectid="1"/><item objectid="2"/></build>`,
    );
    expect(meshVolume(taken(packed(two)).mesh)).toBeCloseTo(24, 12);
    expect(taken(packed(two)).remarks).toHaveLength(1);
  });
  test('what is not listed to be made is not taken', () => {
    expect(problem(packed(one.replace('<item objectid="1"/>', ''))).code).toBe('empty');
  });
});

describe('what is refused', () => {
  const lattice = 'http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02';
  test.each([
    ['no package at all', strToU8('PK\u0003\u0004 and nothing more'), 'broken-off'],
    ['a package of something else', pack({ 'word/document.xml': '<a/>' }), 'unreadable'],
    ['an end in the midst', packed(one.slice(0, 600)), 'unreadable'],
    [
      'a triangle of a vertex that is not there',
      packed(one.replace('v1="7"', 'v1="8"').replace('v1="6"', 'v1="8"').replace('v3="7"', 'v3="8"')),
      'unreadable',
    ],
    ['a place that is none', packed(one.replace('x="4"', 'x="4mm"')), 'unreadable'],
    ['an unknown unit', packed(one.replace('millimeter', 'furlong')), 'unreadable'],
    [
      'a place of an item in eleven numbers',
      packed(one.replace('<item', '<item transform="1 0 0 0 1 0 0 0 1 0 0"')),
      'unreadable',
    ],
    ['an object that is not there', packed(one.replace('<item objectid="1"', '<item objectid="2"')), 'unreadable'],
    ['a document type', packed(one.replace('<!-- a box -->', '<!DOCTYPE model [<!ENTITY a "aaaa">]>')), 'unreadable'],
    [
      'an extension that it needs',
      packed(one.replace('unit=', `requiredextensions="b" xmlns:b="${lattice}" unit=`)),
      'not-supported',
    ],
  ])('%s', (_, bytes, code) => {
    expect(problem(bytes).code).toBe(code);
  });
  test('a faulty line is named', () => {
    const text = one.replace('<resources>', '\n\n<resources>').replace('x="4"', 'x=""');
    expect(problem(packed(text)).place).toBe('/3d/3dmodel.model, line 3');
  });
  test('objects in a ring', () => {
    const ring = model(
      '<resources><object id="1"><components><component objectid="1"/></components></object></resources><build><item objectid="1"/></build>',
    );
    expect(problem(packed(ring)).code).toBe('unreadable');
  });
  test('few lines that unfold into millions of pieces', () => {
    const doubling = Array.from(
      { length: 24 },
      (_, i) =>
        `<object id="${i + 2}"><components><component objectid="${i + 1}"/><component objectid="${i + 1}"/></components></object>`,
    ).join('');
    const text = model(
      `<resources><object id="1">${meshXml}</object>${doubling}</resources><build><item objectid="25"/></build>`,
    );
    expect(problem(packed(text)).code).toBe('too-large');
  });
  test('a package that unfolds into more than is taken, without unpacking it', () => {
    const bytes = zipSync({ '3D/3dmodel.model': new Uint8Array(260 * 1024 * 1024) }, { level: 1 });
    expect(bytes.length).toBeLessThan(4 * 1024 * 1024);
    expect(problem(bytes).code).toBe('too-large');
  });
  test('a package that lies about the size of its model', () => {
    const bytes = packed(one);
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
    for (let at = 0; at + 30 < bytes.length; at++) {
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 100, true);
      if (view.getUint32(at, true) === 0x04034b50) view.setUint32(at + 22, 100, true);
    }
    expect(problem(bytes).code).toBe('unreadable');
  });
  test('content that was damaged on its way', () => {
    const bytes = zipSync({ '3D/3dmodel.model': strToU8(one) }, { level: 0 });
    const at = bytes.findIndex((_, i) => String.fromCharCode(...bytes.subarray(i, i + 5)) === 'x="4"');
    bytes[at + 3] = '5'.charCodeAt(0);
    expect(problem(bytes)).toMatchObject({ code: 'unreadable', place: '3D/3dmodel.model' });
  });
});
