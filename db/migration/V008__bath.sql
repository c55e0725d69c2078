-- What cooks enter at the baths. Repeating one is harmless: a device numbers its own. What has gone through a
-- bath is the sum of its entries; there is no state to overwrite.
create table bath_entry (
  kitchen_id uuid not null,
  id uuid not null,
  plan_id uuid not null,
  kind varchar(16) not null,
  formula varchar(120) not null,
  business_day date not null,
  label varchar(8) not null,
  run varchar(300),
  drop_id uuid,
  pieces bigint,
  millimetres numeric(9,3),
  fresh varchar(8),
  rule varchar(16),
  tub varchar(120),
  note varchar(500),
  cook varchar(80) not null,
  device_id uuid not null,
  device_sequence bigint not null,
  device_time timestamp with time zone not null,
  device_offset_minutes integer not null,
  server_time timestamp with time zone not null,
  undoes uuid,
  change_number bigint not null,
  constraint pk_bath_entry primary key (kitchen_id, id),
  constraint uq_bath_entry_device unique (kitchen_id, device_id, device_sequence),
  constraint fk_bath_entry_plan foreign key (kitchen_id, plan_id) references plan (kitchen_id, id)
);
create index ix_bath_entry_day on bath_entry (kitchen_id, business_day);

-- What was said at a test piece or a tasting, what went in to put it right, and what became of parts held back to
-- taste. The basis is the batch's, in grams, so that what went in can be told as a share of it.
create table gate_entry (
  kitchen_id uuid not null,
  id uuid not null,
  plan_id uuid not null,
  kind varchar(16) not null,
  task varchar(300) not null,
  make varchar(300) not null,
  formula varchar(120) not null,
  version integer not null,
  step varchar(120) not null,
  basis numeric(18,6) not null,
  said varchar(200) not null,
  added varchar(2000) not null,
  line varchar(400),
  note varchar(500),
  cook varchar(80) not null,
  device_id uuid not null,
  device_sequence bigint not null,
  device_time timestamp with time zone not null,
  device_offset_minutes integer not null,
  server_time timestamp with time zone not null,
  undoes uuid,
  change_number bigint not null,
  constraint pk_gate_entry primary key (kitchen_id, id),
  constraint uq_gate_entry_device unique (kitchen_id, device_id, device_sequence),
  constraint fk_gate_entry_plan foreign key (kitchen_id, plan_id) references plan (kitchen_id, id)
);
create index ix_gate_entry_task on gate_entry (kitchen_id, task);
create index ix_gate_entry_formula on gate_entry (kitchen_id, formula, version);
