-- Who does what when, of an accepted plan: written once, never changed; the highest number of a
-- plan is in force.
create table crew_plan (
  kitchen_id uuid not null,
  id uuid not null,
  plan_id uuid not null,
  number integer not null,
  made_at timestamp with time zone not null,
  made_by varchar(80) not null,
  seed bigint not null,
  iterations integer not null,
  body text not null,
  change_number bigint not null,
  constraint pk_crew_plan primary key (kitchen_id, id),
  constraint uq_crew_plan_number unique (kitchen_id, plan_id, number),
  constraint fk_crew_plan_plan foreign key (kitchen_id, plan_id) references plan (kitchen_id, id)
);
