-- Reading what is there, or what came last, must not take longer the longer a kitchen has been at work.

create index ix_tick_change on tick (kitchen_id, change_number);
create index ix_tick_time on tick (kitchen_id, server_time);
create index ix_gate_entry_time on gate_entry (kitchen_id, server_time);
create index ix_lot_task on lot (kitchen_id, task);

-- Tubs that have something left, or were emptied by assumption alone: what the ledger says of all tubs, beside
-- it, so that the empty ones need not be added up. It can be made anew from the movements.
create table open_lot (
  kitchen_id uuid not null,
  lot_id uuid not null,
  constraint pk_open_lot primary key (kitchen_id, lot_id),
  constraint fk_open_lot_lot foreign key (kitchen_id, lot_id) references lot (kitchen_id, id)
);

insert into open_lot (kitchen_id, lot_id)
select kitchen_id, lot_id from movement
group by kitchen_id, lot_id
having sum(case when kind in ('RESERVED', 'DIPPED') then 0 else amount end) > 0
  or max(case when kind = 'ASSUMED' then 1 else 0 end) = 1;
