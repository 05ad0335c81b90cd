import { mkdir, readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { readBuildFile } from '../../src/main/store/read-build-file.ts';
import { writeBuildJson } from '../../src/shared/build/build-json.ts';
import { adding, byId, okOf, partOf, refusalOf, sampleBuild, workbench } from './sample-build.ts';

const bench = workbench();

test('a build file and its JSON form read alike, and nothing is left beside them', async () => {
  const file = await bench.file();
  const store = await bench.open(file);
  okOf(await store.makeIssue({ letter: 'A', title: 'First', note: '' }));
  await store.close();
  const fromFile = okOf(await readBuildFile(file));
  expect(byId(fromFile.records)).toEqual(byId(sampleBuild()));
  expect(fromFile.issues).toMatchObject([{ letter: 'A', title: 'First' }]);
  const json = path.join(path.dirname(file), 'frame.json');
  await writeFile(json, `\uFEFF  ${writeBuildJson(fromFile)}`);
  const fromJson = okOf(await readBuildFile(json));
  expect(byId(fromJson.records)).toEqual(byId(fromFile.records));
  expect(fromJson.issues).toHaveLength(1);
  expect((await readdir(path.dirname(file))).sort()).toEqual(['frame.json', 'frame.wayw']);
});

test('a build that is being edited is read as it was last saved, and can go on being edited', async () => {
  const file = await bench.file();
  const store = await bench.open(file);
  okOf(await store.commit(0, 'add', adding(partOf(9))));
  expect(okOf(await readBuildFile(file)).records).toContainEqual(partOf(9));
  okOf(await store.commit(1, 'add', adding(partOf(10))));
});

test('what is no build is refused with its code', async () => {
  const folder = await bench.folder();
  const at = (name: string) => path.join(folder, name);
  await writeFile(at('a.json'), '{"format":"waywright-build","version":1,"records":[]}');
  await writeFile(at('b.json'), '{"format":');
  await writeFile(at('c.txt'), 'A letter.');
  await mkdir(at('d'));
  expect(refusalOf(await readBuildFile(at('a.json')))).toMatchObject({
    code: 'json',
    problems: [{ code: 'settings-missing' }],
  });
  expect(refusalOf(await readBuildFile(at('b.json')))).toMatchObject({
    code: 'json',
    problems: [{ code: 'not-json' }],
  });
  expect(refusalOf(await readBuildFile(at('c.txt'))).code).toBe('not-a-build');
  expect(refusalOf(await readBuildFile(at('d'))).code).toBe('unreadable');
  expect(refusalOf(await readBuildFile(at('none.wayw'))).code).toBe('not-found');
});
