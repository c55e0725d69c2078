-- What a plan computed is large and seldom asked for: beside it, not in it, so that finding the
-- plan in force reads nothing of it.
create table plan_result (
  kitchen_id uuid not null,
  plan_id uuid not null,
  body text not null,
  hash char(64) not null,
  constraint pk_plan_result primary key (kitchen_id, plan_id),
  constraint fk_plan_result_plan foreign key (kitchen_id, plan_id) references plan (kitchen_id, id)
);

insert into plan_result (kitchen_id, plan_id, body, hash)
select kitchen_id, id, result, result_hash from plan;

alter table plan drop column result;
alter table plan drop column result_hash;
