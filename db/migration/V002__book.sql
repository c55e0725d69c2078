-- The kitchen book by the piece: one row for everything that is edited, versioned or exported by itself.
-- A body is the piece as the book format writes it, so that nothing typed is lost; what SQL has to ask for
-- stands in columns beside it.
create table book_part (
  kitchen_id uuid not null,
  id uuid not null,
  kind varchar(24) not null,
  code varchar(120) not null,
  place integer not null,
  body text not null,
  change_number bigint not null,
  constraint pk_book_part primary key (kitchen_id, id),
  constraint uq_book_part_code unique (kitchen_id, kind, code),
  constraint fk_book_part_kitchen foreign key (kitchen_id) references kitchen (id)
);

-- A formula is its versions; each save is a new one, and none is ever changed.
create table formula (
  kitchen_id uuid not null,
  id uuid not null,
  code varchar(120) not null,
  place integer not null,
  body text not null,
  change_number bigint not null,
  constraint pk_formula primary key (kitchen_id, id),
  constraint uq_formula_code unique (kitchen_id, code),
  constraint fk_formula_kitchen foreign key (kitchen_id) references kitchen (id)
);
create table formula_version (
  kitchen_id uuid not null,
  id uuid not null,
  formula_id uuid not null,
  version integer not null,
  body text not null,
  who varchar(80) not null,
  saved_at timestamp with time zone not null,
  change_number bigint not null,
  constraint pk_formula_version primary key (kitchen_id, id),
  constraint uq_formula_version_number unique (kitchen_id, formula_id, version),
  constraint fk_formula_version_formula foreign key (kitchen_id, formula_id)
    references formula (kitchen_id, id)
);

create table event (
  kitchen_id uuid not null,
  id uuid not null,
  code varchar(120) not null,
  place integer not null,
  held_on date not null,
  body text not null,
  change_number bigint not null,
  constraint pk_event primary key (kitchen_id, id),
  constraint uq_event_code unique (kitchen_id, code),
  constraint fk_event_kitchen foreign key (kitchen_id) references kitchen (id)
);
create index ix_event_held_on on event (kitchen_id, held_on);

-- What a regular service uses of a component on a weekday (1 is Monday): as typed, and in grams or pieces.
create table par (
  kitchen_id uuid not null,
  id uuid not null,
  service varchar(120) not null,
  component varchar(120) not null,
  output varchar(120) default '' not null,
  weekday smallint not null,
  place integer not null,
  typed varchar(60) not null,
  amount numeric(18,6) not null,
  dimension varchar(8) not null,
  change_number bigint not null,
  constraint pk_par primary key (kitchen_id, id),
  constraint uq_par_cell unique (kitchen_id, service, component, output, weekday),
  constraint ck_par_weekday check (weekday between 1 and 7),
  constraint ck_par_amount check (amount >= 0),
  constraint fk_par_kitchen foreign key (kitchen_id) references kitchen (id)
);
