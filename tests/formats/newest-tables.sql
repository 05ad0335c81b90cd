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

CREATE TABLE machine (
    id text not null primary key check (id glob 'machine:?*'),
    name text not null check (name <> ''),
    type text not null check (type in ('lathe', 'drill press', 'milling machine', 'shaper', 'planer', 'grinder', 'bandsaw',
      'surface plate', 'vise', 'furnace', 'crucible', 'flask', 'hot-wire bow')),
    figures text not null check (json_type(figures) = 'object'),
    bed text not null check (json_type(bed) = 'array'),
    generic integer not null check (generic in (0, 1)),
    note text not null,
    place text not null check (json_type(place) in ('integer', 'real'))
  ) strict;

CREATE TABLE setup (
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
  ) strict;

CREATE TABLE operation (
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
  ) strict;

CREATE TABLE setup_use (
    setup text not null references setup (id) deferrable initially deferred,
    part text references part (id) deferrable initially deferred,
    station text references station (id) deferrable initially deferred,
    dimension text references dimension (id) deferrable initially deferred,
    operation text references operation (id) deferrable initially deferred,
    check ((part is not null) + (station is not null) + (dimension is not null) + (operation is not null) = 1)
  ) strict;

CREATE TABLE operation_use (
    operation text not null references operation (id) deferrable initially deferred,
    station text references station (id) deferrable initially deferred,
    dimension text references dimension (id) deferrable initially deferred,
    body text references body (id) deferrable initially deferred,
    earlier text references operation (id) deferrable initially deferred,
    check ((station is not null) + (dimension is not null) + (body is not null) + (earlier is not null) = 1)
  ) strict;

CREATE INDEX setup_by_part on setup (part);

CREATE INDEX setup_by_machine on setup (machine) where machine is not null;

CREATE INDEX operation_by_part on operation (part);

CREATE INDEX operation_by_setup on operation (setup) where setup is not null;

CREATE INDEX setup_use_by_setup on setup_use (setup);

CREATE INDEX setup_use_by_part on setup_use (part) where part is not null;

CREATE INDEX setup_use_by_station on setup_use (station) where station is not null;

CREATE INDEX setup_use_by_dimension on setup_use (dimension) where dimension is not null;

CREATE INDEX setup_use_by_operation on setup_use (operation) where operation is not null;

CREATE INDEX operation_use_by_operation on operation_use (operation);

CREATE INDEX operation_use_by_station on operation_use (station) where station is not null;

CREATE INDEX operation_use_by_dimension on operation_use (dimension) where dimension is not null;

CREATE INDEX operation_use_by_body on operation_use (body) where body is not null;

CREATE INDEX operation_use_by_earlier on operation_use (earlier) where earlier is not null;

CREATE TRIGGER setup_added after insert on setup begin 
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
    or path like '%.through' or path like '%.meets[%');
  end;

CREATE TRIGGER setup_changed after update on setup begin
  delete from setup_use where setup = old.id;
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
    or path like '%.through' or path like '%.meets[%');
  end;

CREATE TRIGGER setup_removed after delete on setup begin
  delete from setup_use where setup = old.id;
  end;

CREATE TRIGGER operation_added after insert on operation begin 
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
  );
  end;

CREATE TRIGGER operation_changed after update on operation begin
  delete from operation_use where operation = old.id;
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
  );
  end;

CREATE TRIGGER operation_removed after delete on operation begin
  delete from operation_use where operation = old.id;
  end;

CREATE TABLE alloy (
    id text not null primary key check (id glob 'alloy:?*'),
    name text not null check (name <> ''),
    family text not null check (family in ('aluminium', 'zinc', 'copper', 'iron')),
    figures text not null check (json_type(figures) = 'object'),
    source text not null
  ) strict;

CREATE TABLE casting (
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
  ) strict;

CREATE TABLE pattern (
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
  ) strict;

CREATE TABLE pour (
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
  ) strict;

CREATE TABLE casting_use (
    casting text not null references casting (id) deferrable initially deferred,
    station text references station (id) deferrable initially deferred,
    dimension text references dimension (id) deferrable initially deferred,
    body text references body (id) deferrable initially deferred,
    check ((station is not null) + (dimension is not null) + (body is not null) = 1)
  ) strict;

CREATE TABLE pour_use (
    pour text not null references pour (id) deferrable initially deferred,
    part text references part (id) deferrable initially deferred,
    pattern text references pattern (id) deferrable initially deferred,
    body text references body (id) deferrable initially deferred,
    check ((part is not null) + (pattern is not null) + (body is not null) = 1)
  ) strict;

CREATE INDEX casting_by_part on casting (part);

CREATE INDEX casting_by_bow on casting (bow) where bow is not null;

CREATE INDEX casting_by_flask on casting (flask) where flask is not null;

CREATE INDEX pattern_by_part on pattern (part);

CREATE INDEX pour_by_furnace on pour (furnace) where furnace is not null;

CREATE INDEX pour_by_crucible on pour (crucible) where crucible is not null;

CREATE INDEX pour_by_flask on pour (flask) where flask is not null;

CREATE INDEX pour_by_earlier on pour (earlier) where earlier is not null;

CREATE INDEX casting_use_by_casting on casting_use (casting);

CREATE INDEX casting_use_by_station on casting_use (station) where station is not null;

CREATE INDEX casting_use_by_dimension on casting_use (dimension) where dimension is not null;

CREATE INDEX casting_use_by_body on casting_use (body) where body is not null;

CREATE INDEX pour_use_by_pour on pour_use (pour);

CREATE INDEX pour_use_by_part on pour_use (part) where part is not null;

CREATE INDEX pour_use_by_pattern on pour_use (pattern) where pattern is not null;

CREATE INDEX pour_use_by_body on pour_use (body) where body is not null;

CREATE TRIGGER casting_added after insert on casting begin 
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
  where type = 'text' and key in ('station', 'size', 'body');
  end;

CREATE TRIGGER casting_changed after update on casting begin
  delete from casting_use where casting = old.id;
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
  where type = 'text' and key in ('station', 'size', 'body');
  end;

CREATE TRIGGER casting_removed after delete on casting begin
  delete from casting_use where casting = old.id;
  end;

CREATE TRIGGER pour_added after insert on pour begin 
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
  where type = 'text' and key in ('part', 'pattern', 'on', 'around');
  end;

CREATE TRIGGER pour_changed after update on pour begin
  delete from pour_use where pour = old.id;
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
  where type = 'text' and key in ('part', 'pattern', 'on', 'around');
  end;

CREATE TRIGGER pour_removed after delete on pour begin
  delete from pour_use where pour = old.id;
  end;
