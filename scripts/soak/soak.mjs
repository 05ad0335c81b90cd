// A longer trial of the store than the tests take time for: thousands of kills, and every single write failing in every
// way. `node scripts/soak/soak.mjs [KILLS]`, by default 1000 kills of each of two builds: about half an hour.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const kills = Number(process.argv[2] ?? 1000);
if (!Number.isInteger(kills) || kills < 1) {
  console.error('Usage: node scripts/soak/soak.mjs [KILLS], a whole number from 1 up.');
  process.exit(2);
}
const { status } = spawnSync('npx', ['vitest', 'run', '--project', 'store', 'tests/faults'], {
  cwd: fileURLToPath(new URL('../../', import.meta.url)),
  env: { ...process.env, WAYWRIGHT_SOAK: String(kills) },
  stdio: 'inherit',
});
process.exit(status ?? 1);
