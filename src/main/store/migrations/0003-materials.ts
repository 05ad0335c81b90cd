import { sql } from 'kysely';
import type { Migration } from './migration.ts';

export const migration: Migration = {
  version: 3,
  title: 'Materials of the build’s own',
  async up(db) {
    await sql
      .raw(
        `create table material (
    id text not null primary key check (id glob 'material:?*'),
    name text not null check (name <> ''),
    known text not null check (json_type(known) = 'object'),
    source text not null
  ) strict`,
      )
      .execute(db);
  },
};
