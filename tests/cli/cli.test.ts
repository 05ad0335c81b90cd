import { copyFile, mkdir, readFile, writeFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { chainOutputSchema } from '../../src/main/cli/output/chain-output.ts';
import { checkOutputSchema } from '../../src/main/cli/output/check-output.ts';
import { importOutputSchema } from '../../src/main/cli/output/import-output.ts';
import { partOutputSchema } from '../../src/main/cli/output/part-output.ts';
import { openStore } from '../../src/main/store/open-store.ts';
import { cli, example, temporaryFolder } from './run-cli.ts';

const inFolder = temporaryFolder();
const faulty = example('as-first-drawn');
const sound = example('as-corrected');
const head = 'part,name,from,to,axis,value,plus,minus,source,sheet';

/** No line is wider than what every terminal shows, save words that cannot be broken. */
const expectNarrow = (text: string): void => {
  for (const line of text.split('\n')) expect(line.length <= 80 || !line.trim().includes(' '), line).toBe(true);
};

describe('check', () => {
  test('a build with faults: status 1, the same findings in words, as JSON, from .wayw and from standard input', async () => {
    const words = await cli(['check', faulty]);
    expect(words).toMatchObject({ status: 1, stderr: '' });
    expect(words.stdout).toMatch(/^Bench filing machine: \d+ stops, \d+ cautions, \d+ notes\n/);
    expect(words.stdout).not.toContain('\u001b');
    expectNarrow(words.stdout);

    const json = await cli(['check', faulty, '--json']);
    expect(json.status).toBe(1);
    const output = checkOutputSchema.parse(JSON.parse(json.stdout));
    expect(output.counts.stop).toBe(output.findings.filter(({ severity }) => severity === 'stop').length);
    for (const { title } of output.findings) expect(words.stdout).toContain(title);

    const made = await cli(['export', faulty, '--wayw', '--out', inFolder('faulty.wayw')]);
    expect(made).toMatchObject({ status: 0, stderr: '' });
    expect((await cli(['check', inFolder('faulty.wayw'), '--json'])).stdout).toBe(json.stdout);
    expect((await cli(['check', '-', '--json'], await readFile(faulty, 'utf8'))).stdout).toBe(json.stdout);
  });

  test('a corrected build: status 0 and every gate open', async () => {
    const { status, stdout } = await cli(['check', sound, '--json']);
    const output = checkOutputSchema.parse(JSON.parse(stdout));
    expect(status).toBe(0);
    expect(output.counts.stop).toBe(0);
    expect(output.parts.length).toBeGreaterThan(10);
    expect(output.parts.flatMap(({ gates }) => gates.filter(({ state }) => state === 'shut'))).toEqual([]);
  });
});

describe('part', () => {
  test('stations, bands and dimensions, in words and as JSON', async () => {
    const words = await cli(['part', sound, 'Guide Column']);
    expect(words).toMatchObject({ status: 0, stderr: '' });
    expect(words.stdout).toContain('Along Z');
    expectNarrow(words.stdout);
    const { stdout } = await cli(['part', sound, 'guide column', '--json']);
    const output = partOutputSchema.parse(JSON.parse(stdout));
    const along = output.axes.find(({ axis }) => axis === 'Z');
    expect(along?.stations.filter(({ datum }) => datum)).toMatchObject([{ atMm: 0, group: 0, path: [] }]);
    expect(output.dimensions.every(({ value }) => value !== undefined)).toBe(true);
    expect((await cli(['part', sound, output.part.id, '--json'])).stdout).toBe(stdout);
  });

  test('a part with a stop: status 1; a part that is not there: status 2 and the nearest name', async () => {
    expect((await cli(['part', faulty, 'trunnion bracket'])).status).toBe(1);
    const missing = await cli(['part', faulty, 'guide colum']);
    expect(missing).toMatchObject({ status: 2, stdout: '' });
    expect(missing.stderr).toContain('guide colum: The build has no such part.');
    expect(missing.stderr).toContain('Did you mean "guide column"?');
  });
});

describe('chain', () => {
  test('adds up the way, signs and bands; turned round it is the same with the other sign', async () => {
    const ends = ['guide column/Z/foot', 'guide column/Z/top face'];
    const words = await cli(['chain', sound, ...ends]);
    expect(words.status).toBe(0);
    expectNarrow(words.stdout);
    const figures = async (stations: readonly string[]) => {
      const { stdout } = await cli(['chain', sound, ...stations, '--json']);
      const { nominalMm, worstCase, links } = chainOutputSchema.parse(JSON.parse(stdout));
      if (nominalMm === undefined || !worstCase) throw new Error(stdout);
      return { nominalMm, worstCase, links };
    };
    const there = await figures(ends);
    const back = await figures([...ends].reverse());
    expect(there.links.reduce((sum, { sign, valueMm }) => sum + sign * valueMm, 0)).toBeCloseTo(there.nominalMm, 9);
    expect(back.nominalMm).toBeCloseTo(-there.nominalMm, 9);
    expect(back.worstCase.leastMm).toBeCloseTo(-there.worstCase.mostMm, 9);
    const lower = there.links.reduce(
      (sum, { sign, lowerMm = 0, upperMm = 0 }) => sum + (sign === 1 ? lowerMm : -upperMm),
      0,
    );
    expect(there.worstCase.leastMm).toBeCloseTo(lower, 9);
  });

  test('stations that nothing ties: status 1; across axes or unknown: status 2', async () => {
    const apart = await cli(['chain', faulty, 'trunnion bracket/Z/foot', 'trunnion bracket/Z/crown']);
    expect(apart).toMatchObject({ status: 1, stderr: '' });
    expect(apart.stdout).toContain('No dimension ties foot to crown along Z of trunnion bracket.');
    const json = await cli(['chain', faulty, 'trunnion bracket/Z/foot', 'trunnion bracket/Z/crown', '--json']);
    expect(chainOutputSchema.parse(JSON.parse(json.stdout))).toMatchObject({ tied: false, links: [] });
    const across = await cli(['chain', sound, 'guide column/Z/foot', 'guide column/X/foot left']);
    expect(across).toMatchObject({ status: 2 });
    const unknown = await cli(['chain', sound, 'guide column/Z/foot', 'guide column/Z/top fase']);
    expect(unknown.status).toBe(2);
    expect(unknown.stderr).toContain('Did you mean "Z/top face"?');
  });
});

describe('import', () => {
  test('takes good rows in one step that can be undone, reports each row, leaves the rest', async () => {
    const file = inFolder('import.wayw');
    await cli(['export', sound, '--wayw', '--out', file]);
    const csv = `${head}\nguide column,foot thickness,,,,13,,,,\nguide column,new,,,length,25 parsecs,,,,\ngib,length,left,right,X,3 in,0.2,0.1,assumed,9\n`;
    await writeFile(inFolder('rows.csv'), csv);
    const run = await cli(['import', file, inFolder('rows.csv'), '--json']);
    expect(run).toMatchObject({ status: 1, stderr: '' });
    const output = importOutputSchema.parse(JSON.parse(run.stdout));
    expect(output).toMatchObject({ written: file, counts: { added: 1, changed: 1, unchanged: 0, refused: 1 } });
    expect(output.rows[1]).toMatchObject({ line: 3, outcome: 'refused' });
    expect(output.rows[2]?.what).toEqual(['part gib', 'station left', 'station right']);
    expect((await cli(['part', file, 'gib', '--json'])).status).toBe(0);

    const again = await cli(['import', file, inFolder('rows.csv')]);
    expect(again.stdout).toContain('0 added, 0 changed, 2 unchanged, 1 refused');
    expect(again.stdout).toContain('There was nothing to change.');
    expectNarrow(again.stdout);

    const opened = await openStore(file);
    if (!opened.ok) throw new Error(opened.error.code);
    const loaded = await opened.value.load();
    expect(loaded).toMatchObject({ ok: true, value: { undo: 'import 2 dimensions' } });
    if (loaded.ok) expect((await opened.value.step('undo', loaded.value.revision)).ok).toBe(true);
    await opened.value.close();
    expect((await cli(['check', file, '--json'])).stdout).toBe((await cli(['check', sound, '--json'])).stdout);
  });

  test('a JSON build is changed where it is, or with --into left alone; --dry-run and --all-or-nothing write nothing', async () => {
    const file = inFolder('import.json');
    await copyFile(sound, file);
    const before = await readFile(file, 'utf8');
    const csv = `part;name;value\nguide column;foot thickness;12,5\nguide column;;1\n`;
    const dry = await cli(['import', file, '-', '--dry-run'], csv);
    expect(dry.stdout).toContain('Nothing was written.');
    expect((await cli(['import', file, '-', '--all-or-nothing'], csv)).stdout).toContain('Nothing was written.');
    expect(await readFile(file, 'utf8')).toBe(before);
    expect((await cli(['import', file, '-', '--into', inFolder('into.json')], csv)).status).toBe(1);
    expect(await readFile(file, 'utf8')).toBe(before);
    expect(await readFile(inFolder('into.json'), 'utf8')).toContain('"value":"12.5"');
    const taken = await cli(['import', file, '-', '--into', inFolder('into.json')], csv);
    expect(taken).toMatchObject({ status: 2, stdout: '' });
    expect(taken.stderr).toContain('There is a file of that name already.');
    await cli(['import', file, '-'], csv);
    expect(await readFile(file, 'utf8')).toBe(await readFile(inFolder('into.json'), 'utf8'));
  });

  test('a whole build in JSON form is taken in place of the other', async () => {
    const file = inFolder('replaced.wayw');
    await cli(['export', sound, '--wayw', '--out', file]);
    const run = await cli(['import', file, faulty]);
    expect(run).toMatchObject({ status: 0, stderr: '' });
    expect(run.stdout).toContain('take in Bench filing machine');
    expect((await cli(['check', file, '--json'])).stdout).toBe((await cli(['check', faulty, '--json'])).stdout);
  });

  test('--known-only adds neither parts nor stations', async () => {
    const csv = `${head}\ngib,length,,,length,30,,,,\n`;
    const run = await cli(['import', sound, '-', '--dry-run', '--known-only', '--json'], csv);
    expect(importOutputSchema.parse(JSON.parse(run.stdout)).rows).toMatchObject([{ outcome: 'refused' }]);
  });

  test('a file that is open elsewhere is not written to', async () => {
    const file = inFolder('held.wayw');
    await cli(['export', sound, '--wayw', '--out', file]);
    const opened = await openStore(file);
    if (!opened.ok) throw new Error(opened.error.code);
    const run = await cli(['import', file, '-'], 'part,name,value\nguide column,foot thickness,13\n');
    await opened.value.close();
    expect(run).toMatchObject({ status: 2, stdout: '' });
    expect(run.stderr).toContain('The file is open elsewhere');
  });
});

describe('export', () => {
  test('JSON and CSV come back as they were', async () => {
    const json = await cli(['export', sound, '--json']);
    expect(json.stdout).toBe(await readFile(sound, 'utf8'));
    const csv = await cli(['export', sound, '--csv']);
    expect(csv.stdout.split('\r\n')[0]).toBe(head);
    const back = await cli(['import', sound, '-', '--dry-run', '--json'], csv.stdout);
    const { counts } = importOutputSchema.parse(JSON.parse(back.stdout));
    expect(counts).toMatchObject({ added: 0, changed: 0, refused: 0 });
    expect(counts.unchanged).toBeGreaterThan(200);
  });

  test('into a new file, never over one that is there unless told to', async () => {
    const out = inFolder('out.csv');
    expect(await cli(['export', sound, '--csv', '--out', out])).toMatchObject({
      status: 0,
      stdout: `Written to ${out}.\n`,
    });
    expect(await cli(['export', sound, '--json', '--out', out])).toMatchObject({ status: 2 });
    expect(await cli(['export', sound, '--json', '--out', out, '--force'])).toMatchObject({ status: 0 });
    expect(await readFile(out, 'utf8')).toBe(await readFile(sound, 'utf8'));
    const nowhere = await cli(['export', sound, '--json', '--out', inFolder('no/such/folder.json')]);
    expect(nowhere.stderr).toContain('The folder is not there.');
  });
});

describe('what is wrong with a call or a file is said with place and remedy, status 2', () => {
  test.each([
    [[], 'No verb is given.'],
    [['chek', faulty], 'Did you mean check?'],
    [['check'], 'Use: waywright check FILE'],
    [['check', faulty, 'more'], 'more: This is one word too many.'],
    [['check', faulty, '--jsn'], "Unknown option '--jsn'"],
    [['export', faulty], 'Add one of --json, --csv, --wayw, --svg, --stl and --3mf.'],
    [['export', faulty, '--wayw'], 'Add --out NEW.wayw.'],
    [['import', '-', '-'], 'Both files cannot come from standard input.'],
    [['import', '-', faulty], 'Add --into NEW'],
    [['check', '/no/such/file.wayw'], '/no/such/file.wayw: There is no such file.'],
    [['import', sound, '/no/such/file.csv'], '/no/such/file.csv: There is no such file.'],
  ])('%j', async (args, words) => {
    const ended = await cli(args);
    expect(ended).toMatchObject({ status: 2, stdout: '' });
    expect(ended.stderr).toContain(words);
    expect(ended.stderr).not.toContain('    at ');
  });

  test('broken JSON by line and column, a build that does not hold together by pointer', async () => {
    const broken = await cli(['check', '-'], '{\n  "format" "waywright-build"\n}');
    expect(broken).toMatchObject({ status: 2 });
    expect(broken.stderr).toContain('line 2, column 12');
    const text = (await readFile(sound, 'utf8')).replace('"make":"cast"', '"make":"forged"');
    const wrong = await cli(['check', '-'], text);
    expect(wrong.stderr).toContain('standard input: The build cannot be taken');
    expect(wrong.stderr).toMatch(/\/records\/\d+\/make/);
  });

  test('a newer version, a folder, something else altogether, a table without names of columns', async () => {
    const newer = (await readFile(sound, 'utf8')).replace(/"version": \d/, '"version": 99');
    expect((await cli(['check', '-'], newer)).stderr).toContain('/version: The build is written in version 99');
    await mkdir(inFolder('folder.wayw'));
    expect((await cli(['check', inFolder('folder.wayw')])).status).toBe(2);
    await writeFile(inFolder('picture.wayw'), 'GIF89a and so on');
    expect((await cli(['check', inFolder('picture.wayw')])).stderr).toContain('neither a build file nor the JSON form');
    const table = await cli(['import', sound, '-', '--dry-run'], 'a,b\n1,2\n');
    expect(table.stderr).toContain('-, line 1: The first line names no column "part".');
  });
});

describe('help', () => {
  test('in general and of every verb that it lists', async () => {
    const general = await cli(['help']);
    expect(general).toMatchObject({ status: 0, stderr: '' });
    expectNarrow(general.stdout);
    const verbs = [...general.stdout.matchAll(/^ {2}(\w+) {2}/gm)]
      .map(([, name]) => name!)
      .filter((name) => name !== 'help');
    expect(verbs).toEqual(['check', 'part', 'chain', 'setup', 'import', 'export', 'thread', 'hole', 'speed']);
    for (const verb of verbs) {
      const help = await cli(['help', verb]);
      expect(help).toMatchObject({ status: 0, stderr: '' });
      expect(help.stdout).toContain(`waywright ${verb} `);
      expectNarrow(help.stdout);
      expect(await cli([verb, '--help'])).toEqual(help);
    }
  });
});
