import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { describe, expect, test } from 'vitest';
import { boxMesh } from '../../../../tests/support/sample-meshes.ts';
import { readStl } from './read-stl.ts';
import { writeStl } from './write-stl.ts';

const box = boxMesh([0, 0, 0], [40, 30, 20]);
const binary = writeStl(box, 'box');
const bytesOf = (text: string) => new TextEncoder().encode(text);
const facet = (corners: string) => `facet normal 0 0 1\nouter loop\n${corners}\nendloop\nendfacet\n`;
const corners = 'vertex 0 0 0\nvertex 1 0 0\nvertex 0 1.5e0 -.5';

const problem = (bytes: Uint8Array) => {
  const read = readStl(bytes);
  if (read.ok) throw new Error('it was taken');
  return read.error;
};
const taken = (bytes: Uint8Array) => {
  const read = readStl(bytes);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
};

describe('binary', () => {
  test('what is written comes back, corner by corner', () => {
    const { mesh, unit, remarks } = taken(binary);
    expect([...mesh.vertices]).toEqual(
      [...box.triangles].flatMap((corner) => [...box.vertices.subarray(corner * 3, corner * 3 + 3)]),
    );
    expect({ unit, remarks }).toEqual({ unit: undefined, remarks: [] });
  });
  test('another reader reads the same, with normals that look outwards', () => {
    const other = new STLLoader().parse(binary.buffer as ArrayBuffer);
    expect([...Array.from(other.attributes.position.array)]).toEqual([...taken(binary).mesh.vertices]);
  });
  test('a head that begins with "solid" does not make it a text', () => {
    expect(taken(writeStl(box, 'solid box')).mesh.triangles).toHaveLength(36);
  });
  test('it may lie anywhere in its buffer', () => {
    const room = new Uint8Array(binary.length + 3);
    room.set(binary, 3);
    expect(taken(room.subarray(3)).mesh.vertices).toEqual(taken(binary).mesh.vertices);
  });
  test('bytes behind the last triangle are told of', () => {
    const longer = new Uint8Array(binary.length + 7);
    longer.set(binary);
    expect(taken(longer).remarks).toEqual(['7 bytes behind the last triangle were passed over.']);
  });
  test('cut short', () => {
    expect(problem(binary.slice(0, 400))).toMatchObject({ code: 'broken-off', place: 'byte 400' });
    expect(problem(binary.slice(0, 400)).sentence).toContain('6 of the 12');
    expect(problem(new Uint8Array(0)).code).toBe('broken-off');
  });
  test('a corner at no place', () => {
    const spoiled = binary.slice();
    new DataView(spoiled.buffer).setFloat32(84 + 50 * 3 + 12, Number.NaN, true);
    expect(problem(spoiled)).toMatchObject({ code: 'unreadable', place: 'triangle 4' });
  });
  test('a count beyond what is taken is refused before room is made for it', () => {
    const many = new Uint8Array(84);
    new DataView(many.buffer).setUint32(80, 4_000_000_000, true);
    expect(problem(many).code).toBe('broken-off');
  });
  test('none at all', () => {
    expect(problem(new Uint8Array(84)).code).toBe('empty');
  });
});

describe('text', () => {
  test.each([
    ['ends of lines of any kind', `solid a\r\n${facet(corners).replaceAll('\n', '\r\n')}endsolid a\r\n`],
    ['capital letters', `SOLID\n${facet(corners).toUpperCase()}ENDSOLID`],
    ['a byte order mark', `\uFEFFsolid\n${facet(corners)}endsolid`],
    ['a name of several words', `solid lid of the box\n${facet(corners)}endsolid lid of the box`],
    ['a normal that is none', `solid\n${facet(corners).replace('0 0 1', 'nan nan nan')}endsolid`],
  ])('%s', (_, text) => {
    expect([...taken(bytesOf(text)).mesh.vertices]).toEqual([0, 0, 0, 1, 0, 0, 0, 1.5, -0.5]);
  });
  test('several solids are taken together', () => {
    const text = `solid a\n${facet(corners)}endsolid a\nsolid b\n${facet(corners)}endsolid b\n`;
    expect(taken(bytesOf(text)).mesh.triangles).toHaveLength(6);
  });
  test('without its last line', () => {
    expect(taken(bytesOf(`solid a\n${facet(corners)}`)).remarks).toHaveLength(1);
  });
  test.each([
    ['a comma as decimal mark', facet(corners.replace('1.5e0', '1,5')), 'unreadable', 'line 6'],
    ['a number missing', facet(corners.replace('1.5e0 ', '')), 'unreadable', 'line 6'],
    ['a hexadecimal number', facet(corners.replace('1.5e0', '0x10')), 'unreadable', 'line 6'],
    ['a number beyond all', facet(corners.replace('1.5e0', '1e999')), 'unreadable', 'line 6'],
    ['four corners', facet(`${corners}\nvertex 1 1 1`), 'unreadable', 'line 8'],
    ['two corners', facet('vertex 0 0 0\nvertex 1 0 0'), 'unreadable', 'line 6'],
    ['a strange word', `${facet(corners)}colour red\n`, 'unreadable', 'line 9'],
    ['nothing', '', 'empty', ''],
  ])('%s', (_, body, code, place) => {
    expect(problem(bytesOf(`solid a\n${body}endsolid a\n`))).toMatchObject({ code, place });
  });
});
