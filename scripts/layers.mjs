import path from 'node:path';
import { parseArgs } from 'node:util';
import { readImports } from './layers/read-imports.mjs';
import { findRings } from './layers/rings.mjs';
import { RING, rules } from './layers/rules.mjs';
import { root as projectRoot } from './steps/place.mjs';
import { main, say } from './steps/run.mjs';

// `npm run layers`: whether every import goes the way it may. `--root DIR` looks at another tree of the same build,
// `--json` says it for programs.
main(async () => {
  const { values } = parseArgs({ options: { root: { type: 'string' }, json: { type: 'boolean', default: false } } });
  const { files, imports } = readImports(path.resolve(values.root ?? projectRoot));

  const breaches = [];
  for (const rule of rules) {
    for (const { from, to, line } of imports) {
      if (rule.from.test(from) && !rule.but?.test(from) && rule.forbids(to, from)) {
        breaches.push({ rule: rule.name, from, to, line, why: rule.why });
      }
    }
  }
  for (const ring of findRings(files, imports)) {
    breaches.push({ rule: RING.name, from: ring[0], to: ring.join(' → '), line: 1, why: RING.why });
  }

  if (values.json) {
    process.stdout.write(
      `${JSON.stringify({ files: files.length, imports: imports.length, rules: rules.map(({ name }) => name), breaches })}\n`,
    );
  } else {
    for (const { rule, from, to, line, why } of breaches) say(`${from}:${line} → ${to}\n  ${rule}: ${why}`);
    say(`${imports.length} imports of ${files.length} files read, ${breaches.length} of them may not be.`);
  }
  // A reader that reads nothing finds nothing wrong.
  return files.length === 0 || imports.length === 0 || breaches.length > 0 ? 1 : 0;
});
