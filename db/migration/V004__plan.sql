-- An accepted plan is immutable: the book it was computed from, the request, the work that had begun, the
-- engine that computed it, and its result.
create table book_snapshot (
  kitchen_id uuid not null,
  id uuid not null,
  hash char(64) not null,
  body text not null,
  constraint pk_book_snapshot primary key (kitchen_id, id),
  constraint uq_book_snapshot_hash unique (kitchen_id, hash),
  constraint fk_book_snapshot_kitchen foreign key (kitchen_id) references kitchen (id)
);

create table plan (
  kitchen_id uuid not null,
  id uuid not null,
  business_day date not null,
  number integer not null,
  previous_id uuid,
  snapshot_id uuid not null,
  as_of timestamp with time zone not null,
  begun text not null,
  engine varchar(40) not null,
  seed bigint not null,
  result text not null,
  result_hash char(64) not null,
  summary text not null,
  facts_number bigint not null,
  who varchar(80) not null,
  accepted_at timestamp with time zone not null,
  change_number bigint not null,
  constraint pk_plan primary key (kitchen_id, id),
  constraint uq_plan_day_number unique (kitchen_id, business_day, number),
  constraint fk_plan_snapshot foreign key (kitchen_id, snapshot_id)
    references book_snapshot (kitchen_id, id),
  constraint fk_plan_previous foreign key (kitchen_id, previous_id) references plan (kitchen_id, id)
);

-- Whatever a cook enters. Repeating one is harmless: a device numbers its own.
create table tick (
  kitchen_id uuid not null,
  id uuid not null,
  plan_id uuid not null,
  task varchar(300) not null,
  kind varchar(16) not null,
  line varchar(400),
  amount numeric(18,6),
  dimension varchar(8),
  note varchar(500),
  cook varchar(80) not null,
  device_id uuid not null,
  device_sequence bigint not null,
  device_time timestamp with time zone not null,
  device_offset_minutes integer not null,
  server_time timestamp with time zone not null,
  undoes uuid,
  change_number bigint not null,
  constraint pk_tick primary key (kitchen_id, id),
  constraint uq_tick_device unique (kitchen_id, device_id, device_sequence),
  constraint fk_tick_plan foreign key (kitchen_id, plan_id) references plan (kitchen_id, id)
);
create index ix_tick_task on tick (kitchen_id, task);
create index ix_tick_plan on tick (kitchen_id, plan_id);

-- Which station has seen which change.
create table change_seen (
  kitchen_id uuid not null,
  id uuid not null,
  number bigint not null,
  station varchar(120) not null,
  who varchar(80) not null,
  at timestamp with time zone not null,
  constraint pk_change_seen primary key (kitchen_id, id),
  constraint uq_change_seen unique (kitchen_id, number, station),
  constraint fk_change_seen_kitchen foreign key (kitchen_id) references kitchen (id)
);
