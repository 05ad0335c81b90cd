import { copyFile, readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { importOutputSchema } from '../../src/main/cli/output/import-output.ts';
import { writeStl } from '../../src/shared/solid/formats/write-stl.ts';
import { boxMesh } from '../support/sample-meshes.ts';
import { cli, example, temporaryFolder } from './run-cli.ts';

/*
 * A foot of 90 × 56 × 24 mm, a hub of 44 mm across with a bore of 28 and a hole of 10 across both, written in inches by
 * Open CASCADE 8, which gives its volume from the exact surfaces as 146531.847 mm³.
 */
const bracket = fileURLToPath(new URL('../formats/solids/bracket-inch.step', import.meta.url));
const BRACKET_MM3 = 146_531.847_078;

const inFolder = temporaryFolder();
const build = () => inFolder('build.json');
const solidOf = (stdout: string) => importOutputSchema.parse(JSON.parse(stdout)).solid;

beforeAll(async () => {
  await writeFile(inFolder('box.stl'), writeStl(boxMesh([0, 0, 0], [40, 30, 20]), 'box'));
});

describe('a solid becomes a body', () => {
  test('STEP, in the unit that it names, with the volume that its maker gives', async () => {
    await copyFile(example('as-corrected'), build());
    const { status, stdout, stderr } = await cli(['import', build(), bracket, '--part', 'base', '--json']);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const solid = solidOf(stdout);
    expect(solid).toMatchObject({ part: 'base', name: 'bracket-inch', form: 'step', unit: 'mm', surfaces: 1 });
    expect(Math.abs((solid?.volumeMm3 ?? 0) / BRACKET_MM3 - 1)).toBeLessThan(5e-5);
    for (const [i, mm] of [90, 56, 70].entries()) expect(solid?.sizeMm[i]).toBeCloseTo(mm, 4);
    const { records } = JSON.parse(await readFile(build(), 'utf8')) as { records: { kind: string; name?: string }[] };
    expect(records.filter(({ kind }) => kind === 'solid')).toMatchObject([{ name: 'bracket-inch', unit: 'mm' }]);
    expect(records.some(({ kind, name }) => kind === 'body' && name === 'bracket-inch')).toBe(true);
    expect((await cli(['check', build()])).status).not.toBe(2);
  });

  test('STL asks for its unit, and doubts one that does not go with the part', async () => {
    await copyFile(example('as-corrected'), build());
    const into = ['import', build(), inFolder('box.stl'), '--part', 'base'];
    const unasked = await cli(into);
    expect(unasked.status).toBe(2);
    expect(unasked.stderr).toContain('40 × 30 × 20');
    const doubted = await cli([...into, '--unit', 'm']);
    expect(doubted.status).toBe(2);
    expect(doubted.stderr).toContain('--unit mm');
    expect(doubted.stderr).toContain('--sure');
    const before = await readFile(build(), 'utf8');
    expect(before).toBe(await readFile(example('as-corrected'), 'utf8'));
    const sure = await cli([...into, '--unit', 'm', '--sure', '--dry-run', '--json']);
    expect(solidOf(sure.stdout)?.volumeMm3).toBeCloseTo(24_000e9, -6);
    const taken = await cli([...into, '--unit', 'mm', '--name', 'pad', '--take', '--finish', 'machined', '--json']);
    expect(solidOf(taken.stdout)).toMatchObject({ name: 'pad', volumeMm3: 24_000, sizeMm: [40, 30, 20] });
  });

  test.each([
    ['without a part', [], '--part'],
    ['with a part that is not there', ['--part', 'lid'], 'no such part'],
    ['with a strange unit', ['--part', 'base', '--unit', 'yard'], 'no unit'],
    ['with a turn that is none', ['--part', 'base', '--unit', 'mm', '--turn', 'X,Y'], '--turn'],
    ['with a turn that mirrors', ['--part', 'base', '--unit', 'mm', '--turn', '+X,+Y,-Z'], 'box.stl'],
    ['at a station that is not there', ['--part', 'base', '--unit', 'mm', '--at', 'nowhere'], '"nowhere" along X'],
  ])('%s it is refused', async (_, options, words) => {
    const { status, stderr } = await cli(['import', example('as-corrected'), inFolder('box.stl'), ...options]);
    expect(status).toBe(2);
    expect(stderr).toContain(words);
  });

  test.each([
    [
      'an open one',
      'open.stl',
      writeStl(
        { ...boxMesh([0, 0, 0], [4, 3, 2]), triangles: boxMesh([0, 0, 0], [4, 3, 2]).triangles.slice(3) },
        'open',
      ),
      'not closed',
    ],
    ['a text of something else', 'notes.stl', 'Buy charcoal.\n', 'ends after'],
    [
      'STEP that breaks off',
      'short.step',
      "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION(('a'),'2;1');\n",
      'cannot be read as STEP',
    ],
    ['a package of something else', 'letter.3mf', 'PK\u0003\u0004', 'package'],
  ])('%s is refused in words, with the name of the file', async (_, name, content, words) => {
    await writeFile(inFolder(name), content);
    const { status, stdout, stderr } = await cli([
      'import',
      example('as-corrected'),
      inFolder(name),
      '--part',
      'base',
      '--unit',
      'mm',
      '--dry-run',
    ]);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain(name);
    expect(stderr).toContain(words);
  });

  test('a file that is not there', async () => {
    const { status, stderr } = await cli(['import', example('as-corrected'), 'none.step', '--part', 'base']);
    expect(status).toBe(2);
    expect(stderr).toContain('none.step');
  });
});

describe('the solid of a part', () => {
  test.each(['stl', '3mf'] as const)('goes out as %s and comes back the same', async (form) => {
    await copyFile(example('as-corrected'), build());
    const part = 'crank pin';
    expect((await cli(['import', build(), bracket, '--part', part, '--sure'])).status).toBe(0);
    const out = inFolder(`part.${form}`);
    const written = await cli(['export', build(), part, `--${form}`, '--out', out]);
    expect(written.stderr).toBe('');
    expect(written.status).toBe(0);
    const again = await cli(['export', build(), part, `--${form}`, '--out', out]);
    expect(again.status).toBe(2);
    const back = await cli([
      'import',
      build(),
      out,
      '--part',
      part,
      '--sure',
      '--dry-run',
      '--json',
      ...(form === 'stl' ? ['--unit', 'mm'] : []),
    ]);
    expect(solidOf(back.stdout)).toMatchObject({ form, unit: 'mm' });
    expect(solidOf(back.stdout)?.volumeMm3).toBeGreaterThan(BRACKET_MM3 * 0.9999);
  });

  test.each([
    ['no part', ['--stl', '--out', 'a.stl'], 'none is named'],
    ['no file', ['base', '--3mf'], 'Add --out NEW.3mf'],
    ['a part for a form of the whole build', ['base', '--csv'], 'no part is chosen'],
    ['two forms', ['base', '--stl', '--3mf', '--out', 'a.stl'], 'One form'],
  ])('%s: refused', async (_, words, said) => {
    const { status, stderr } = await cli(['export', example('as-corrected'), ...words]);
    expect(status).toBe(2);
    expect(stderr).toContain(said);
  });

  test('a part without bodies says so', async () => {
    await writeFile(build(), JSON.stringify(await withoutBodies()));
    const { status, stderr } = await cli(['export', build(), 'base', '--stl', '--out', inFolder('none.stl')]);
    expect(status).toBe(2);
    expect(stderr).toContain('no bodies');
  });
});

/** Operations go too: they make bodies. */
async function withoutBodies() {
  const whole = JSON.parse(await readFile(example('as-corrected'), 'utf8')) as { records: { kind: string }[] };
  return { ...whole, records: whole.records.filter(({ kind }) => !['body', 'setup', 'operation'].includes(kind)) };
}
