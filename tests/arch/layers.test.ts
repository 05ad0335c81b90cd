import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const root = path.resolve(import.meta.dirname, '..', '..');

interface Breach {
  readonly rule: string;
  readonly from: string;
  readonly to: string;
  readonly line: number;
}

interface Report {
  readonly files: number;
  readonly imports: number;
  readonly rules: readonly string[];
  readonly breaches: readonly Breach[];
}

function look(at: string): Report & { readonly status: number | null } {
  const run = spawnSync(process.execPath, [path.join(root, 'scripts', 'layers.mjs'), '--json', '--root', at], {
    encoding: 'utf8',
  });
  if (run.stdout === '') throw new Error(run.stderr);
  return { ...(JSON.parse(run.stdout) as Report), status: run.status };
}

/** A breach of every rule: the file that is planted, what it says, and the rule that must name it. */
const plants: readonly (readonly [rule: string, file: string, text: string])[] = [
  ['there', 'src/shared/base/p-gone.ts', "import './no-such-file.ts';"],
  ['known-room', 'src/shared/attic/p-room.ts', "import '../base/result.ts';"],
  ['room-base', 'src/shared/base/p-up.ts', "import type { Result } from '../quantity/planted.ts';"],
  ['room-quantity', 'src/shared/quantity/p-up.ts', "import '../formula/planted.ts';"],
  ['room-formula', 'src/shared/formula/p-up.ts', "export * from '../build/planted.ts';"],
  ['room-tables', 'src/shared/tables/p-up.ts', "import '../build/planted.ts';"],
  ['room-build', 'src/shared/build/p-up.ts', "export { x } from '../drawing/planted.ts';"],
  ['room-drawing', 'src/shared/drawing/p-up.ts', "export const late = () => import('../solid/planted.ts');"],
  ['room-solid', 'src/shared/solid/p-up.ts', "export type Late = import('../sheet/planted.ts').Late;"],
  ['room-sheet', 'src/shared/sheet/p-up.ts', "import '../pattern/planted.ts';"],
  ['room-plan', 'src/shared/plan/p-up.ts', "import '../pattern/planted.ts';"],
  ['room-pattern', 'src/shared/pattern/p-up.ts', "import '../foundry/planted.ts';"],
  ['room-foundry', 'src/shared/foundry/p-up.ts', "import '../machining/planted.ts';"],
  ['room-machining', 'src/shared/machining/p-up.ts', "import '../fitting/planted.ts';"],
  ['room-fitting', 'src/shared/fitting/p-up.ts', "import '../erecting/planted.ts';"],
  ['room-erecting', 'src/shared/erecting/p-up.ts', "export const all = import.meta.glob('../check/rules/*.ts');"],
  ['room-check', 'src/shared/check/p-up.ts', "import '../ipc/planted.ts';"],
  ['room-ipc', 'src/shared/ipc/p-up.ts', "import '../attic/p-room.ts';"],
  ['shared-is-closed', 'src/shared/base/p-out.ts', "import '../../main/cli/planted.ts';"],
  ['shared-is-pure', 'src/shared/base/p-node.ts', "import { readFileSync } from 'fs';"],
  ['shared-is-pure', 'src/shared/base/p-package.ts', "import { useState } from 'react';"],
  ['papaparse-only-in-csv', 'src/shared/build/p-csv.ts', "import Papa from 'papaparse';"],
  ['zip-only-in-formats', 'src/shared/build/p-zip.ts', "import { unzipSync } from 'fflate';"],
  ['kernel-only-in-manifold', 'src/shared/solid/p-kernel.ts', "import Module from 'manifold-3d';"],
  ['step-only-in-solids', 'src/main/files/p-step.ts', "import load from 'occt-import-js';"],
  ['three-only-in-view', 'src/renderer/departments/drawing/p-three.tsx', "import { Mesh } from 'three/addons/x.js';"],
  ['store-only', 'src/main/files/p-database.ts', "import sqlite3 from 'sqlite3';"],
  ['renderer-not-main', 'src/renderer/app/p-main.ts', "import '../../main/cli/planted.ts';"],
  ['main-not-renderer', 'src/main/files/p-window.ts', "import '../../renderer/app/planted.ts';"],
  [
    'renderer-no-node',
    'src/renderer/app/p-node.tsx',
    "import path from 'node:path';\nexport const here = <p>{path.sep}</p>;",
  ],
  ['main-no-page', 'src/main/files/p-page.ts', "import { createElement } from 'react';"],
  ['plain-node', 'src/main/cli/p-electron.ts', "import { app } from 'electron';"],
  ['plain-node', 'src/main/store/p-menu.ts', "import '../menu/planted.ts';"],
  ['preload-is-thin', 'src/main/preload.ts', "import { z } from 'zod';"],
  ['departments-apart', 'src/renderer/departments/drawing/p-other.ts', "import '../foundry/planted.ts';"],
  ['departments-apart', 'src/renderer/works/p-other.ts', "import '../departments/foundry/planted.ts';"],
  ['kit-is-plain', 'src/renderer/kit/p-app.ts', "import '../app/planted.ts';"],
  [
    'engine-below-screens',
    'src/renderer/engine/p-kit.ts',
    "new Worker(new URL('../app/planted.ts', import.meta.url));",
  ],
  ['rules-apart', 'src/shared/check/rules/drawing/p-rule.ts', "import rule from './planted.ts';"],
  ['no-tests-in-the-program', 'src/shared/base/p-test.ts', "import './planted.test.ts';"],
  ['no-rings', 'src/shared/base/p-ring-a.ts', "import './p-ring-b.ts';"],
  ['no-rings', 'src/shared/base/p-ring-self.ts', "import './p-ring-self.ts';"],
];

/** Harmless files for the plants to import. */
const targets = [
  ...['base', 'quantity', 'formula', 'tables', 'build', 'drawing', 'solid', 'sheet', 'plan', 'pattern', 'foundry'],
  ...['machining', 'fitting', 'erecting', 'check', 'check/rules/drawing', 'ipc'],
].map((room) => `src/shared/${room}/planted.ts`);
const moreTargets = [
  'src/main/cli/planted.ts',
  'src/main/menu/planted.ts',
  'src/renderer/app/planted.ts',
  'src/renderer/departments/foundry/planted.ts',
  'src/shared/base/planted.test.ts',
  'src/shared/base/result.ts',
];

describe('the layers', () => {
  let planted: string;
  let report: ReturnType<typeof look>;

  beforeAll(() => {
    planted = mkdtempSync(path.join(os.tmpdir(), 'waywright-layers-'));
    const write = (file: string, text: string): void => {
      mkdirSync(path.dirname(path.join(planted, file)), { recursive: true });
      writeFileSync(path.join(planted, file), text);
    };
    for (const target of [...targets, ...moreTargets]) write(target, 'export const x = 1;\n');
    write('src/shared/base/p-ring-b.ts', "import './p-ring-a.ts';\n");
    for (const [, file, text] of plants) write(file, `${text}\n`);
    report = look(planted);
  });
  afterAll(() => rmSync(planted, { recursive: true, force: true }));

  test.each(plants)('%s catches %s', (rule, file) => {
    const caught = report.breaches.filter((breach) => breach.rule === rule);
    const named = caught.some(({ from, to }) => from === file || (rule === 'no-rings' && to.includes(file)));
    expect(named).toBe(true);
  });

  test('a breach fails the command', () => {
    expect(report.status).toBe(1);
  });

  test('every rule has a breach planted here', () => {
    const tried = new Set(plants.map(([rule]) => rule));
    expect([...report.rules].filter((rule) => !tried.has(rule))).toEqual([]);
  });

  test('nothing else is accused', () => {
    const allowed = new Set(plants.map(([, file]) => file));
    expect(report.breaches.filter(({ from }) => !allowed.has(from) && from !== 'src/shared/base/p-ring-b.ts')).toEqual(
      [],
    );
  });
});

describe('the program itself', () => {
  test('is read whole, and keeps its layers', () => {
    const report = look(root);
    expect(report.files).toBeGreaterThan(100);
    expect(report.imports).toBeGreaterThan(report.files);
    expect(report.breaches).toEqual([]);
  });

  test('a breach planted in a copy of it is caught', () => {
    const copy = mkdtempSync(path.join(os.tmpdir(), 'waywright-copy-'));
    try {
      cpSync(path.join(root, 'src'), path.join(copy, 'src'), { recursive: true });
      const before = look(copy);
      writeFileSync(path.join(copy, 'src/shared/base/planted.ts'), "import '../ipc/contract.ts';\n");
      const after = look(copy);
      expect(after.status).toBe(1);
      const fresh = after.breaches.filter(({ from }) => from === 'src/shared/base/planted.ts');
      expect(fresh).toMatchObject([{ rule: 'room-base', line: 1 }]);
      expect(after.files).toBe(before.files + 1);
    } finally {
      rmSync(copy, { recursive: true, force: true });
    }
  });

  test('an empty tree is no success', () => {
    const empty = mkdtempSync(path.join(os.tmpdir(), 'waywright-empty-'));
    try {
      mkdirSync(path.join(empty, 'src'));
      expect(look(empty).status).toBe(1);
    } finally {
      rmSync(empty, { recursive: true, force: true });
    }
  });
});
