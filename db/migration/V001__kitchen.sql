-- A kitchen is the unit of tenancy, of sharding and of export: every row below carries its id, and the
-- lock on its row puts its changes in order.
create table kitchen (
  id uuid not null,
  code varchar(16) not null,
  change_number bigint default 0 not null,
  facts_number bigint default 0 not null,
  created_at timestamp with time zone not null,
  constraint pk_kitchen primary key (id),
  constraint uq_kitchen_code unique (code)
);

-- What changed, in order; append-only. A fact is what a plan is computed from, a tick is not.
create table change_log (
  kitchen_id uuid not null,
  id uuid not null,
  number bigint not null,
  kind varchar(32) not null,
  subject varchar(300) not null,
  detail text not null,
  who varchar(80) not null,
  at timestamp with time zone not null,
  constraint pk_change_log primary key (kitchen_id, id),
  constraint uq_change_log_number unique (kitchen_id, number),
  constraint fk_change_log_kitchen foreign key (kitchen_id) references kitchen (id)
);
create index ix_change_log_kind on change_log (kitchen_id, kind, number);
