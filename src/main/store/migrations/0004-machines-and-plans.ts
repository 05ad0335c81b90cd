import { sql } from 'kysely';
import type { Migration } from './migration.ts';

// What set-ups and operations name stands partly inside JSON, where SQLite sees no references. As with bodies, triggers draw
// it out into tables of real ones. Here free texts stand beside the ids (names, lengths as written), and one of them may begin
// like an id: an id is recognised by where it stands.
const SETUP_USES = `
  insert into setup_use (setup, part, station, dimension, operation)
  select distinct new.id,
    iif(value glob 'part:*', value, null),
    iif(value glob 'station:*', value, null),
    iif(value glob 'dimension:*', value, null),
    iif(value glob 'operation:*', value, null)
  from (
    select key, value, type, path from json_tree(new.state)
    union all
    select key, value, type, path from json_tree(new.fellows)
    union all
    select key, value, type, path from json_tree(new.fixtures)
    union all
    select key, value, type, path from json_tree(new.line)
    union all
    select key, value, type, path from json_tree(new.holding)
  )
  where type = 'text' and (key in ('part', 'station', 'size', 'operation')
    or path like '%.through' or path like '%.meets[%');`;

const OPERATION_USES = `
  insert into operation_use (operation, station, dimension, body, earlier)
  select distinct new.id,
    iif(value glob 'station:*', value, null),
    iif(value glob 'dimension:*', value, null),
    iif(value glob 'body:*', value, null),
    iif(value glob 'operation:*', value, null)
  from (
    select value from json_each(new.makes)
    union all
    select value from json_each(new.needs)
    union all
    select value from json_each(new.after)
    union all
    select value from json_tree(new.cut) where type = 'text' and key in ('station', 'size')
    union all
    select value from json_tree(new.tool) where type = 'text' and key = 'size'
  );`;

const STATEMENTS = [
  `create table machine (
    id text not null primary key check (id glob 'machine:?*'),
    name text not null check (name <> ''),
    type text not null check (type in ('lathe', 'drill press', 'milling machine', 'shaper', 'planer', 'grinder', 'bandsaw',
      'surface plate', 'vise', 'furnace', 'crucible', 'flask', 'hot-wire bow')),
    figures text not null check (json_type(figures) = 'object'),
    bed text not null check (json_type(bed) = 'array'),
    generic integer not null check (generic in (0, 1)),
    note text not null,
    place text not null check (json_type(place) in ('integer', 'real'))
  ) strict`,
  `create table setup (
    id text not null primary key check (id glob 'setup:?*'),
    part text not null references part (id) deferrable initially deferred,
    name text not null check (name <> ''),
    machine text references machine (id) deferrable initially deferred,
    state text not null check (json_type(state) = 'object'),
    allowance text not null,
    fellows text not null check (json_type(fellows) = 'array'),
    fixtures text not null check (json_type(fixtures) = 'array'),
    line text not null check (json_type(line) = 'object'),
    head_end text not null check (head_end in ('low', 'high')),
    holding text not null check (json_type(holding) = 'object'),
    minutes text not null,
    note text not null,
    place text not null check (json_type(place) in ('integer', 'real'))
  ) strict`,
  `create table operation (
    id text not null primary key check (id glob 'operation:?*'),
    part text not null references part (id) deferrable initially deferred,
    name text not null check (name <> ''),
    process text not null check (process in ('face', 'turn', 'bore', 'drill', 'ream', 'tap', 'countersink', 'counterbore',
      'mill', 'shape', 'plane', 'grind', 'scrape', 'lap', 'saw', 'file')),
    setup text references setup (id) deferrable initially deferred,
    makes text not null check (json_type(makes) = 'array'),
    needs text not null check (json_type(needs) = 'array'),
    after text not null check (json_type(after) = 'array'),
    leaves text not null,
    cut text check (json_type(cut) = 'object'),
    tool text not null check (json_type(tool) = 'object'),
    chosen text not null check (json_type(chosen) = 'object'),
    note text not null,
    place text not null check (json_type(place) in ('integer', 'real'))
  ) strict`,
  `create table setup_use (
    setup text not null references setup (id) deferrable initially deferred,
    part text references part (id) deferrable initially deferred,
    station text references station (id) deferrable initially deferred,
    dimension text references dimension (id) deferrable initially deferred,
    operation text references operation (id) deferrable initially deferred,
    check ((part is not null) + (station is not null) + (dimension is not null) + (operation is not null) = 1)
  ) strict`,
  `create table operation_use (
    operation text not null references operation (id) deferrable initially deferred,
    station text references station (id) deferrable initially deferred,
    dimension text references dimension (id) deferrable initially deferred,
    body text references body (id) deferrable initially deferred,
    earlier text references operation (id) deferrable initially deferred,
    check ((station is not null) + (dimension is not null) + (body is not null) + (earlier is not null) = 1)
  ) strict`,
  'create index setup_by_part on setup (part)',
  'create index setup_by_machine on setup (machine) where machine is not null',
  'create index operation_by_part on operation (part)',
  'create index operation_by_setup on operation (setup) where setup is not null',
  'create index setup_use_by_setup on setup_use (setup)',
  'create index setup_use_by_part on setup_use (part) where part is not null',
  'create index setup_use_by_station on setup_use (station) where station is not null',
  'create index setup_use_by_dimension on setup_use (dimension) where dimension is not null',
  'create index setup_use_by_operation on setup_use (operation) where operation is not null',
  'create index operation_use_by_operation on operation_use (operation)',
  'create index operation_use_by_station on operation_use (station) where station is not null',
  'create index operation_use_by_dimension on operation_use (dimension) where dimension is not null',
  'create index operation_use_by_body on operation_use (body) where body is not null',
  'create index operation_use_by_earlier on operation_use (earlier) where earlier is not null',
  `create trigger setup_added after insert on setup begin ${SETUP_USES}
  end`,
  `create trigger setup_changed after update on setup begin
  delete from setup_use where setup = old.id;${SETUP_USES}
  end`,
  `create trigger setup_removed after delete on setup begin
  delete from setup_use where setup = old.id;
  end`,
  `create trigger operation_added after insert on operation begin ${OPERATION_USES}
  end`,
  `create trigger operation_changed after update on operation begin
  delete from operation_use where operation = old.id;${OPERATION_USES}
  end`,
  `create trigger operation_removed after delete on operation begin
  delete from operation_use where operation = old.id;
  end`,
];

export const migration: Migration = {
  version: 4,
  title: 'Machines, set-ups and operations',
  async up(db) {
    for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
  },
};
