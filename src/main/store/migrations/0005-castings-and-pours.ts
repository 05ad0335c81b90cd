import { sql } from 'kysely';
import type { Migration } from './migration.ts';

// As with set-ups: what stands inside JSON is drawn out by triggers into tables of references, an id being recognised by where it
// stands, since names and texts beside it are free.
const CASTING_USES = `
  insert into casting_use (casting, station, dimension, body)
  select distinct new.id,
    iif(key = 'station', value, null),
    iif(key = 'size', value, null),
    iif(key = 'body', value, null)
  from (
    select key, value, type from json_tree(new.stock)
    union all
    select key, value, type from json_tree(new.size_stock)
    union all
    select key, value, type from json_tree(new.parting)
    union all
    select key, value, type from json_tree(new.prints)
    union all
    select key, value, type from json_tree(new.lugs)
  )
  where type = 'text' and key in ('station', 'size', 'body');`;

const POUR_USES = `
  insert into pour_use (pour, part, pattern, body)
  select distinct new.id,
    iif(key = 'part', value, null),
    iif(key = 'pattern', value, null),
    iif(key in ('on', 'around'), value, null)
  from (
    select key, value, type from json_tree(new.castings)
    union all
    select key, value, type from json_tree(new.risers)
    union all
    select key, value, type from json_tree(new.inserts)
  )
  where type = 'text' and key in ('part', 'pattern', 'on', 'around');`;

const STATEMENTS = [
  `create table alloy (
    id text not null primary key check (id glob 'alloy:?*'),
    name text not null check (name <> ''),
    family text not null check (family in ('aluminium', 'zinc', 'copper', 'iron')),
    figures text not null check (json_type(figures) = 'object'),
    source text not null
  ) strict`,
  `create table casting (
    id text not null primary key check (id glob 'casting:?*'),
    part text not null references part (id) deferrable initially deferred,
    moulding text not null check (moulding in ('foam in dry sand', 'foam in rammed sand', 'loose pattern in green sand',
      'split pattern in green sand', 'core-made')),
    contraction text not null check (json_type(contraction) = 'array'),
    stock_grade text not null check (stock_grade in ('', 'A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'J', 'K')),
    stock text not null check (json_type(stock) = 'array'),
    size_stock text not null check (json_type(size_stock) = 'array'),
    cope_extra text not null,
    up text check (up in ('+X', '-X', '+Y', '-Y', '+Z', '-Z')),
    parting text check (json_type(parting) = 'object'),
    draft text not null,
    close_under text not null,
    coating text not null,
    glue_joint text not null,
    prints text not null check (json_type(prints) = 'array'),
    lugs text not null check (json_type(lugs) = 'array'),
    boards text not null check (json_type(boards) = 'array'),
    foam_density text not null,
    section_axis text check (section_axis in ('X', 'Y', 'Z')),
    bow text references machine (id) deferrable initially deferred,
    flask text references machine (id) deferrable initially deferred,
    note text not null
  ) strict`,
  `create table pattern (
    id text not null primary key check (id glob 'pattern:?*'),
    part text not null references part (id) deferrable initially deferred,
    name text not null check (name <> ''),
    measured text not null check (json_type(measured) = 'array'),
    on_casting text not null check (json_type(on_casting) = 'array'),
    trials text not null check (json_type(trials) = 'array'),
    bare text not null,
    scale_step text not null,
    rule text not null check (json_type(rule) = 'object'),
    plaster integer not null check (plaster in (0, 1)),
    weighings text not null check (json_type(weighings) = 'array'),
    taken_on text not null,
    note text not null,
    place text not null check (json_type(place) in ('integer', 'real'))
  ) strict`,
  `create table pour (
    id text not null primary key check (id glob 'pour:?*'),
    name text not null check (name <> ''),
    castings text not null check (json_type(castings) = 'array'),
    alloy text not null,
    furnace text references machine (id) deferrable initially deferred,
    crucible text references machine (id) deferrable initially deferred,
    flask text references machine (id) deferrable initially deferred,
    temperature text not null,
    ambient text not null,
    gating text not null check (json_type(gating) = 'object'),
    risers text not null check (json_type(risers) = 'array'),
    inserts text not null check (json_type(inserts) = 'array'),
    overflow text not null,
    loss text not null,
    heel text not null,
    cope_weight text not null,
    cover_above text not null,
    cover_around text not null,
    sand_density text not null,
    earlier text references pour (id) deferrable initially deferred,
    journal text check (json_type(journal) = 'object'),
    note text not null,
    place text not null check (json_type(place) in ('integer', 'real'))
  ) strict`,
  `create table casting_use (
    casting text not null references casting (id) deferrable initially deferred,
    station text references station (id) deferrable initially deferred,
    dimension text references dimension (id) deferrable initially deferred,
    body text references body (id) deferrable initially deferred,
    check ((station is not null) + (dimension is not null) + (body is not null) = 1)
  ) strict`,
  `create table pour_use (
    pour text not null references pour (id) deferrable initially deferred,
    part text references part (id) deferrable initially deferred,
    pattern text references pattern (id) deferrable initially deferred,
    body text references body (id) deferrable initially deferred,
    check ((part is not null) + (pattern is not null) + (body is not null) = 1)
  ) strict`,
  'create index casting_by_part on casting (part)',
  'create index casting_by_bow on casting (bow) where bow is not null',
  'create index casting_by_flask on casting (flask) where flask is not null',
  'create index pattern_by_part on pattern (part)',
  'create index pour_by_furnace on pour (furnace) where furnace is not null',
  'create index pour_by_crucible on pour (crucible) where crucible is not null',
  'create index pour_by_flask on pour (flask) where flask is not null',
  'create index pour_by_earlier on pour (earlier) where earlier is not null',
  'create index casting_use_by_casting on casting_use (casting)',
  'create index casting_use_by_station on casting_use (station) where station is not null',
  'create index casting_use_by_dimension on casting_use (dimension) where dimension is not null',
  'create index casting_use_by_body on casting_use (body) where body is not null',
  'create index pour_use_by_pour on pour_use (pour)',
  'create index pour_use_by_part on pour_use (part) where part is not null',
  'create index pour_use_by_pattern on pour_use (pattern) where pattern is not null',
  'create index pour_use_by_body on pour_use (body) where body is not null',
  `create trigger casting_added after insert on casting begin ${CASTING_USES}
  end`,
  `create trigger casting_changed after update on casting begin
  delete from casting_use where casting = old.id;${CASTING_USES}
  end`,
  `create trigger casting_removed after delete on casting begin
  delete from casting_use where casting = old.id;
  end`,
  `create trigger pour_added after insert on pour begin ${POUR_USES}
  end`,
  `create trigger pour_changed after update on pour begin
  delete from pour_use where pour = old.id;${POUR_USES}
  end`,
  `create trigger pour_removed after delete on pour begin
  delete from pour_use where pour = old.id;
  end`,
];

export const migration: Migration = {
  version: 5,
  title: 'Alloys, castings, patterns and pours',
  async up(db) {
    for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
  },
};
