CREATE TABLE meta (
    id integer primary key check (id = 1),
    revision integer not null check (revision >= 0),
    created_at text not null
  ) strict;

CREATE TABLE settings (
    id text not null primary key check (id = 'settings:build'),
    name text not null check (name <> ''),
    note text not null,
    length_unit text not null check (length_unit in ('mm', 'in')),
    machined_tolerance text not null check (machined_tolerance in ('f', 'm', 'c', 'v')),
    casting_grade integer not null check (casting_grade between 1 and 16)
  ) strict;

CREATE TABLE part (
    id text not null primary key check (id glob 'part:?*'),
    name text not null check (name <> ''),
    number text not null,
    sheet text not null,
    make text not null check (make in ('cast', 'stock', 'bought')),
    material text not null,
    quantity integer not null check (quantity between 1 and 10000),
    note text not null,
    place text not null check (json_type(place) in ('integer', 'real'))
  ) strict;

CREATE TABLE station (
    id text not null primary key check (id glob 'station:?*'),
    part text not null references part (id) deferrable initially deferred,
    axis text not null check (axis in ('X', 'Y', 'Z')),
    name text not null check (name <> ''),
    form text not null check (form in ('face', 'shoulder', 'centreline')),
    datum integer not null check (datum in (0, 1)),
    note text not null,
    place text not null check (json_type(place) in ('integer', 'real'))
  ) strict;

CREATE TABLE dimension (
    id text not null primary key check (id glob 'dimension:?*'),
    part text not null references part (id) deferrable initially deferred,
    name text not null check (name <> ''),
    from_station text references station (id) deferrable initially deferred,
    to_station text references station (id) deferrable initially deferred,
    size_form text check (size_form in
      ('diameter', 'radius', 'length', 'angle', 'thread', 'count', 'mass', 'temperature')),
    value text not null,
    limits text not null,
    source text not null check (source in ('drawn', 'measured', 'assumed', 'derived')),
    finish text not null check (finish in ('as cast', 'machined')),
    sheet text not null,
    note text not null,
    place text not null check (json_type(place) in ('integer', 'real')),
    check ((from_station is null) = (to_station is null) and (from_station is null) = (size_form is not null))
  ) strict;

CREATE TABLE acceptance (
    id text not null primary key check (id glob 'acceptance:?*'),
    rule text not null check (rule <> ''),
    finding text not null check (finding <> ''),
    figures text not null,
    reason text not null check (reason <> ''),
    accepted_at text not null
  ) strict;

CREATE TABLE journal (
    seq integer primary key,
    state text not null check (state in ('first', 'done', 'undone', 'abandoned')),
    label text not null,
    diff text not null check (json_valid(diff)),
    at text not null
  ) strict;

CREATE TABLE drawing_issue (
    letter text not null primary key check (letter <> ''),
    title text not null,
    note text not null,
    issued_at text not null,
    revision integer not null,
    content text not null check (json_valid(content))
  ) strict;

CREATE INDEX station_by_part on station (part);

CREATE INDEX dimension_by_part on dimension (part);

CREATE INDEX dimension_by_from on dimension (from_station);

CREATE INDEX dimension_by_to on dimension (to_station);

CREATE INDEX journal_by_state on journal (state, seq);

CREATE TABLE solid (
    id text not null primary key check (id glob 'solid:?*'),
    name text not null check (name <> ''),
    file_name text not null,
    unit text not null check (unit in ('mm', 'cm', 'm', 'in', 'ft')),
    vertices text not null,
    triangles text not null,
    note text not null
  ) strict;

CREATE TABLE body (
    id text not null primary key check (id glob 'body:?*'),
    part text not null references part (id) deferrable initially deferred,
    name text not null check (name <> ''),
    adds integer not null check (adds in (0, 1)),
    finish text not null check (finish in ('as cast', 'cored', 'machined')),
    shape text not null check (json_type(shape) = 'object'),
    repeats text not null check (json_type(repeats) = 'array'),
    note text not null,
    place text not null check (json_type(place) in ('integer', 'real'))
  ) strict;

CREATE TABLE body_use (
    body text not null references body (id) deferrable initially deferred,
    station text references station (id) deferrable initially deferred,
    dimension text references dimension (id) deferrable initially deferred,
    solid text references solid (id) deferrable initially deferred,
    check ((station is not null) + (dimension is not null) + (solid is not null) = 1)
  ) strict;

CREATE INDEX body_by_part on body (part);

CREATE INDEX body_use_by_body on body_use (body);

CREATE INDEX body_use_by_station on body_use (station) where station is not null;

CREATE INDEX body_use_by_dimension on body_use (dimension) where dimension is not null;

CREATE INDEX body_use_by_solid on body_use (solid) where solid is not null;

CREATE TRIGGER body_added after insert on body begin 
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
  where type = 'text' and (value glob 'station:*' or value glob 'dimension:*' or value glob 'solid:*');
  end;

CREATE TRIGGER body_changed after update on body begin
  delete from body_use where body = old.id;
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
  where type = 'text' and (value glob 'station:*' or value glob 'dimension:*' or value glob 'solid:*');
  end;

CREATE TRIGGER body_removed after delete on body begin
  delete from body_use where body = old.id;
  end;

CREATE TABLE material (
    id text not null primary key check (id glob 'material:?*'),
    name text not null check (name <> ''),
    known text not null check (json_type(known) = 'object'),
    source text not null
  ) strict;
