-- Stock is a ledger: tubs, and append-only movements. What is left of a tub is the sum of its movements;
-- there is no quantity to overwrite.
create table lot (
  kitchen_id uuid not null,
  id uuid not null,
  code varchar(120) not null,
  formula varchar(120) not null,
  output varchar(120) default '' not null,
  version integer,
  dimension varchar(8) not null,
  made_at timestamp with time zone not null,
  use_by timestamp with time zone not null,
  place varchar(200) not null,
  container varchar(120),
  task varchar(300),
  change_number bigint not null,
  constraint pk_lot primary key (kitchen_id, id),
  constraint uq_lot_code unique (kitchen_id, code),
  constraint fk_lot_kitchen foreign key (kitchen_id) references kitchen (id)
);
create index ix_lot_formula on lot (kitchen_id, formula);

-- Amounts are signed, grams or pieces. A reservation moves nothing out of the tub: it says for whom.
create table movement (
  kitchen_id uuid not null,
  id uuid not null,
  lot_id uuid not null,
  kind varchar(16) not null,
  amount numeric(18,6) not null,
  stated numeric(18,6),
  event varchar(120),
  reason varchar(500),
  who varchar(80) not null,
  at timestamp with time zone not null,
  tick_id uuid,
  change_number bigint not null,
  constraint pk_movement primary key (kitchen_id, id),
  constraint fk_movement_lot foreign key (kitchen_id, lot_id) references lot (kitchen_id, id)
);
create index ix_movement_lot on movement (kitchen_id, lot_id);
create index ix_movement_tick on movement (kitchen_id, tick_id);
