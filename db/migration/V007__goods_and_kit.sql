-- What suppliers are to bring, what came of it, and what was washed. A delivery is a piece of the book and is
-- edited; its entries are append-only: what a line came to, and when it was here, is the fold of them.
create table delivery (
  kitchen_id uuid not null,
  id uuid not null,
  code varchar(120) not null,
  place integer not null,
  held_on date not null,
  body text not null,
  change_number bigint not null,
  constraint pk_delivery primary key (kitchen_id, id),
  constraint uq_delivery_code unique (kitchen_id, code),
  constraint fk_delivery_kitchen foreign key (kitchen_id) references kitchen (id)
);

create table delivery_entry (
  kitchen_id uuid not null,
  id uuid not null,
  delivery varchar(120) not null,
  place integer not null,
  body text not null,
  change_number bigint not null,
  constraint pk_delivery_entry primary key (kitchen_id, id),
  constraint fk_delivery_entry_delivery foreign key (kitchen_id, delivery)
    references delivery (kitchen_id, code)
);
create index ix_delivery_entry on delivery_entry (kitchen_id, delivery, change_number);

-- A thing that food went through is clean again, or a task is done with another: append-only, and what is
-- undone counts as never said.
create table wash (
  kitchen_id uuid not null,
  id uuid not null,
  thing varchar(200) not null,
  how varchar(500) not null,
  task varchar(300),
  who varchar(80) not null,
  at timestamp with time zone not null,
  undoes uuid,
  change_number bigint not null,
  constraint pk_wash primary key (kitchen_id, id),
  constraint fk_wash_kitchen foreign key (kitchen_id) references kitchen (id)
);
create index ix_wash_at on wash (kitchen_id, at);
