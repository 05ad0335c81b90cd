import { sql } from 'kysely';
import type { Migration } from './migration.ts';

// What a body hangs on stands inside its shape, where SQLite sees no references. The triggers draw it out into a table of
// real ones, so that no edit can leave a body hanging on a station, size or mesh that is gone. An id is recognised by its
// beginning: no other text of a shape begins so, for they are all words of a closed list.
const DRAW_OUT = `
  insert into body_use (body, station, dimension, solid)
  select distinct new.id,
    iif(value glob 'station:*', value, null),
    iif(value glob 'dimension:*', value, null),
    iif(value glob 'solid:*', value, null)
  from (
    select value, type from json_tree(new.shape)
    union all
    select value, type from json_tree(new.repeats)
  )
  where type = 'text' and (value glob 'station:*' or value glob 'dimension:*' or value glob 'solid:*');`;

const STATEMENTS = [
  `create table solid (
    id text not null primary key check (id glob 'solid:?*'),
    name text not null check (name <> ''),
    file_name text not null,
    unit text not null check (unit in ('mm', 'cm', 'm', 'in', 'ft')),
    vertices text not null,
    triangles text not null,
    note text not null
  ) strict`,
  `create table body (
    id text not null primary key check (id glob 'body:?*'),
    part text not null references part (id) deferrable initially deferred,
    name text not null check (name <> ''),
    adds integer not null check (adds in (0, 1)),
    finish text not null check (finish in ('as cast', 'cored', 'machined')),
    shape text not null check (json_type(shape) = 'object'),
    repeats text not null check (json_type(repeats) = 'array'),
    note text not null,
    place text not null check (json_type(place) in ('integer', 'real'))
  ) strict`,
  `create table body_use (
    body text not null references body (id) deferrable initially deferred,
    station text references station (id) deferrable initially deferred,
    dimension text references dimension (id) deferrable initially deferred,
    solid text references solid (id) deferrable initially deferred,
    check ((station is not null) + (dimension is not null) + (solid is not null) = 1)
  ) strict`,
  'create index body_by_part on body (part)',
  'create index body_use_by_body on body_use (body)',
  'create index body_use_by_station on body_use (station) where station is not null',
  'create index body_use_by_dimension on body_use (dimension) where dimension is not null',
  'create index body_use_by_solid on body_use (solid) where solid is not null',
  `create trigger body_added after insert on body begin ${DRAW_OUT}
  end`,
  `create trigger body_changed after update on body begin
  delete from body_use where body = old.id;${DRAW_OUT}
  end`,
  `create trigger body_removed after delete on body begin
  delete from body_use where body = old.id;
  end`,
];

export const migration: Migration = {
  version: 2,
  title: 'Bodies and imported solids',
  async up(db) {
    for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
  },
};
