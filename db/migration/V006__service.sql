-- What is called and sent while a service runs; append-only, and repeating an entry is harmless: a device
-- numbers its own. A plate sent says what lay on it, so that a later change of the dish changes no past.
create table service_entry (
  kitchen_id uuid not null,
  id uuid not null,
  business_day date not null,
  service varchar(300) not null,
  kind varchar(16) not null,
  course varchar(120) default '' not null,
  dish varchar(120) default '' not null,
  diets varchar(500) default '' not null,
  item varchar(120) default '' not null,
  stand_in varchar(120) default '' not null,
  confirmed_by varchar(80),
  station varchar(120) default '' not null,
  number integer not null,
  plate text not null,
  note varchar(500),
  who varchar(80) not null,
  device_id uuid not null,
  device_sequence bigint not null,
  device_time timestamp with time zone not null,
  device_offset_minutes integer not null,
  server_time timestamp with time zone not null,
  undoes uuid,
  change_number bigint not null,
  constraint pk_service_entry primary key (kitchen_id, id),
  constraint uq_service_entry_device unique (kitchen_id, device_id, device_sequence),
  constraint fk_service_entry_kitchen foreign key (kitchen_id) references kitchen (id)
);
create index ix_service_entry_day on service_entry (kitchen_id, business_day, change_number);
