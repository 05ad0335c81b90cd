import { existsSync } from 'node:fs';
import { ensureCli } from '../../scripts/steps/build.mjs';
import { inRoot } from '../../scripts/steps/place.mjs';

/** Before the tests that call the command line: it is built, so that no test pays for it or races another one to it. */
export default async function setUp() {
  if (existsSync(inRoot('src', 'main', 'cli', 'main.ts'))) await ensureCli();
}
