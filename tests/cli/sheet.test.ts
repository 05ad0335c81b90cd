import { readFile, writeFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { writeBuildJson } from '../../src/shared/build/build-json.ts';
import { sixtyDimensions } from '../support/sixty-dimensions.ts';
import { cli, temporaryFolder } from './run-cli.ts';

const inFolder = temporaryFolder();

async function head(): Promise<string> {
  const { records } = sixtyDimensions();
  const file = inFolder('head.json');
  await writeFile(file, writeBuildJson({ records, issues: [] }));
  return file;
}

test('the sheet of a part goes to a file or to standard output, the same both ways', async () => {
  const file = await head();
  const shown = await cli(['export', file, 'spindle head', '--svg']);
  expect(shown).toMatchObject({ status: 0, stderr: '' });
  expect(shown.stdout).toMatch(/^<\?xml [^>]*>\n<svg [^>]* viewBox="0 0 \d+ \d+"/);
  expect(shown.stdout).toContain('counterbore ⌀22 deep 1.5');
  const out = inFolder('head.svg');
  expect(await cli(['export', file, 'spindle head', '--svg', '--out', out])).toMatchObject({
    status: 0,
    stdout: `Written to ${out}.\n`,
  });
  expect(await readFile(out, 'utf8')).toBe(shown.stdout);
  expect(await cli(['export', file, 'spindle head', '--svg', '--out', out])).toMatchObject({ status: 2 });
});

test('a section, third angle, a paper and the casting as it is poured change what is drawn', async () => {
  const file = await head();
  const draw = async (...more: readonly string[]) =>
    (await cli(['export', file, 'spindle head', '--svg', ...more])).stdout;
  const cut = await draw('--section', 'Y/middle');
  expect(cut).toContain('>A–A</text>');
  expect(await draw('--section', 'Y/middle', '--from', 'end')).not.toBe(cut);
  expect(await draw('--paper', 'a2')).toContain('width="594mm" height="420mm"');
  expect(await draw('--third')).not.toBe(await draw());
  const cast = await cli(['export', file, 'spindle head', '--svg', '--as-cast']);
  expect(cast.status).toBe(0);
  expect(cast.stdout).toContain('as cast');
  expect(cast.stderr).toContain('Size slot width');
});

test.each([
  [['--svg'], 'With --svg one part is drawn, and none is named.'],
  [['spindle head', '--svg', '--paper', 'A9'], 'Choose one of A4, A3, A2, A1, A0.'],
  [['spindle head', '--svg', '--section', 'Y/midle'], 'Did you mean "Y/middle"?'],
  [['spindle head', '--svg', '--section', 'Y/middle', '--from', 'above'], 'Write start or end.'],
  [['spindle head', '--svg', '--from', 'end'], 'Add --section AXIS/STATION.'],
  [['spindel head', '--svg'], 'Did you mean "Spindle head"?'],
])('%j is refused with the remedy', async (args, words) => {
  const ended = await cli(['export', await head(), ...args]);
  expect(ended).toMatchObject({ status: 2, stdout: '' });
  expect(ended.stderr).toContain(words);
});
