-- Who is in on a day when the book says otherwise, and which machines do not work: append-only, and repeating an
-- entry is harmless: a device numbers its own. Taken back by a further entry.
create table crew_entry (
  kitchen_id uuid not null,
  id uuid not null,
  business_day date not null,
  kind varchar(16) not null,
  person varchar(120) default '' not null,
  equipment varchar(120) default '' not null,
  units integer not null,
  starts timestamp with time zone,
  ends timestamp with time zone,
  note varchar(500),
  who varchar(80) not null,
  device_id uuid not null,
  device_sequence bigint not null,
  device_time timestamp with time zone not null,
  device_offset_minutes integer not null,
  server_time timestamp with time zone not null,
  ends_entry uuid,
  undoes uuid,
  change_number bigint not null,
  constraint pk_crew_entry primary key (kitchen_id, id),
  constraint uq_crew_entry_device unique (kitchen_id, device_id, device_sequence),
  constraint fk_crew_entry_kitchen foreign key (kitchen_id) references kitchen (id)
);
create index ix_crew_entry_day on crew_entry (kitchen_id, business_day);
create index ix_crew_entry_equipment on crew_entry (kitchen_id, equipment);
