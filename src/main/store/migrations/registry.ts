import { assert } from '../../../shared/base/assert.ts';
import type { Migration } from './migration.ts';

const modules = import.meta.glob<Migration>('./[0-9]*-*.ts', { eager: true, import: 'migration' });

/** All migrations, oldest first. A file in this folder is all it takes to add one. */
export const migrations: readonly Migration[] = Object.keys(modules)
  .sort()
  .map((path, index) => {
    const migration = modules[path]!;
    assert(migration.version === index + 1, `migrations count 1, 2, 3 … without gaps (${path})`);
    assert(
      Number(/^\.\/(\d{4})-/.exec(path)?.[1]) === migration.version,
      `a migration is numbered like its file (${path})`,
    );
    return migration;
  });

/** The version that this program writes. */
export const NEWEST_VERSION = migrations.length;
