import { writeFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { setupOutputSchema } from '../../src/main/cli/output/setup-output.ts';
import type { SetupId } from '../../src/shared/base/ids.ts';
import { writeBuildJson } from '../../src/shared/build/build-json.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import { block, latheFigures, round, sketchSetup, type theMachine, turn } from '../support/setup-sketch.ts';
import { cli, temporaryFolder } from './run-cli.ts';

const inFolder = temporaryFolder();

/** Ids of sketches are short names; files want them whole. */
function withWholeIds(records: readonly BuildRecord[]): readonly BuildRecord[] {
  const numbers = new Map<string, number>();
  const whole = (id: string, kind: string): string => {
    const n = numbers.get(id) ?? numbers.size;
    numbers.set(id, n);
    return `${kind}:${n.toString(32).padStart(10, '0')}`;
  };
  const ids = new Set<string>(records.map(({ id }) => id));
  const text = JSON.stringify(records, (_, value: unknown) =>
    typeof value === 'string' && ids.has(value) && value !== 'settings:build'
      ? whole(value, value.slice(0, value.indexOf(':')))
      : value,
  );
  return JSON.parse(text) as BuildRecord[];
}

/** A block about its bore that hits a lathe of 100 mm height of centres by 18.5 mm, and a shaft that clears. */
async function shopFile(name: string, over: (s: ReturnType<typeof sketchSetup>) => void = () => {}): Promise<string> {
  const s = sketchSetup();
  s.machine(latheFigures);
  block(s, [0, 100], [-60, 60], [-20, 102.4]);
  round(s, [0, 160], 40);
  s.setup({ name: 'bore the block' });
  turn(s, 'turn the end', 120, 160, 40);
  over(s);
  const file = inFolder(name);
  await writeFile(file, writeBuildJson({ records: withWholeIds(s.records()), issues: [] }));
  return file;
}

describe('setup', () => {
  test('what hits is told with what carries it and what would mend it; status 1', async () => {
    const file = await shopFile('hits.json');
    const { status, stdout, stderr } = await cli(['setup', file, 'Bore the Block']);
    expect({ status, stderr }).toEqual({ status: 1, stderr: '' });
    expect(stdout).toMatch(/^bore the block \(body b, between centres on lathe, along X\)/);
    expect(stdout).toMatch(/over bed\s+hits/);
    expect(stdout).toContain('What would help');
    expect(stdout).toContain('Work that hits the bed');
    for (const line of stdout.split('\n')) expect(line.length <= 80 || !line.trim().includes(' '), line).toBe(true);
    const json = await cli(['setup', file, 'bore the block', '--json']);
    expect(json.status).toBe(1);
    const output = setupOutputSchema.parse(JSON.parse(json.stdout));
    const bed = output.verdicts.find(({ kind }) => kind === 'over-bed');
    expect(bed).toMatchObject({ state: 'hits', hasMm: 100, carriedBy: { name: 'block 1' } });
    expect(bed?.marginMm).toBeCloseTo(100 - Math.hypot(60, 102.4), 6);
    expect(bed?.remedies[0]?.words).toMatch(/^make Z102.4 /);
    expect(output.profile?.at(-1)?.toMm).toBeCloseTo(160, 6);
    expect(output.profile?.at(-1)?.mostMm).toBeCloseTo(20, 6);
    expect(output.findings.length).toBeGreaterThan(0);
  });

  test('what clears: status 0, by name with its part, by id', async () => {
    const s = await shopFile('clears.json', (sketch) => {
      sketch.machine(
        { ...latheFigures, swingOverBed: '300', swingOverSaddle: '290', swingOverCrossSlide: '280' },
        { id: 'machine:big' as typeof theMachine, name: 'big lathe' },
      );
      sketch.setup({ id: 'setup:two' as SetupId, name: 'on the big one', machine: 'machine:big' as typeof theMachine });
    });
    const run = await cli(['setup', s, 'on the big one', 'body b']);
    expect(run).toMatchObject({ status: 0, stderr: '' });
    const id = setupOutputSchema.parse(JSON.parse((await cli(['setup', s, 'on the big one', '--json'])).stdout)).setup
      .id;
    expect((await cli(['setup', s, id])).stdout).toBe(run.stdout);
  });

  test('a set-up whose line is not said cannot be judged, and says so', async () => {
    const file = await shopFile('no-line.json', (s) => {
      s.setup({ id: 'setup:two' as SetupId, name: 'no line', line: { axis: 'X' } });
    });
    const { status, stdout } = await cli(['setup', file, 'no line']);
    expect(status).toBe(1);
    expect(stdout).toContain('Cannot be judged');
    expect(stdout).toContain('the line that it turns about or moves along');
  });

  test('no such set-up, no such part, two of one name: status 2 with the way out', async () => {
    const file = await shopFile('names.json', (s) => {
      s.setup({ id: 'setup:two' as SetupId, name: 'bore the block' });
    });
    const none = await cli(['setup', file, 'bore the blok']);
    expect(none).toMatchObject({ status: 2, stdout: '' });
    expect(none.stderr).toContain('Did you mean "bore the block"?');
    const two = await cli(['setup', file, 'bore the block']);
    expect(two.status).toBe(2);
    expect(two.stderr).toContain('2 set-ups have this name');
    expect((await cli(['setup', file, 'bore the block', 'nobody'])).status).toBe(2);
    expect((await cli(['setup', file])).status).toBe(2);
  });
});
