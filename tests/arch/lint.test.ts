import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

const root = path.resolve(import.meta.dirname, '..', '..');
const biome = path.join(root, 'node_modules', '@biomejs', 'biome', 'bin', 'biome');

const plants = [
  ['noRestrictedGlobals', 'src/shared/base/now.ts', 'export const t = (): number => Date.now();\n'],
  ['noRestrictedGlobals', 'src/shared/base/date.ts', 'export const t = (): Date => new Date();\n'],
  ['plugin', 'src/shared/base/chance.ts', 'export const r = (): number => Math.random();\n'],
  ['plugin', 'src/shared/base/chance-kept.ts', 'export const r = Math.random;\n'],
  ['noExplicitAny', 'src/main/app/any.ts', 'export const x = (a: any): unknown => a;\n'],
  ['noTsIgnore', 'src/main/app/ignore.ts', '// @ts-ignore\nexport const x: number = "1";\n'],
  [
    'noDangerouslySetInnerHtml',
    'src/renderer/app/raw.tsx',
    'export const X = ({ t }: { t: string }) => <p dangerouslySetInnerHTML={{ __html: t }} />;\n',
  ],
] as const;

const sound = [
  ['src/main/app/clock.ts', 'export const t = (): number => Date.now() + Math.random();\n'],
  ['src/shared/base/root.ts', 'export const root = (x: number): number => Math.sqrt(x);\n'],
  ['src/shared/base/clock.test.ts', 'export const t = (): number => Date.now() + Math.random();\n'],
] as const;

let tree: string;
beforeAll(() => {
  tree = mkdtempSync(path.join(os.tmpdir(), 'waywright-lint-'));
  cpSync(path.join(root, 'biome.json'), path.join(tree, 'biome.json'));
  cpSync(path.join(root, 'scripts', 'lint'), path.join(tree, 'scripts', 'lint'), { recursive: true });
  const write = (file: string, text: string): void => {
    mkdirSync(path.dirname(path.join(tree, file)), { recursive: true });
    writeFileSync(path.join(tree, file), text);
  };
  for (const [, file, text] of plants) write(file, text);
  for (const [file, text] of sound) write(file, text);
});
afterAll(() => rmSync(tree, { recursive: true, force: true }));

function lint(file: string) {
  const run = spawnSync(process.execPath, [biome, 'lint', '--vcs-enabled=false', '--error-on-warnings', file], {
    cwd: tree,
    encoding: 'utf8',
  });
  return { said: run.stdout + run.stderr, status: run.status };
}

// A rule that cannot fail is worse than none: each of ours is seen to catch its breach.
test.each(plants)('%s catches %s', (rule, file) => {
  const { said, status } = lint(file);
  expect(said).toContain(rule);
  expect(status).toBe(1);
});

test.each(sound)('%s is left alone', (file) => {
  expect(lint(file).status).toBe(0);
});
