-- What hands do to a tub beside using it is in its ledger too: where it was moved, that it was frozen and
-- thawed, what was taken back, and what a loss had cost. So the row of a tub is what it was when it was
-- filled, and never changes.

-- Where it stands from then on.
alter table movement add column place varchar(200);
-- Frozen: until when the kitchen said it keeps. Thawed: its use-by from then on.
alter table movement add column use_by timestamp with time zone;
-- Frozen: how many days it may still be used when it is thawed, the day of thawing counted; where days count.
alter table movement add column days integer;
-- Number of the change that this takes back: one row for a tub, so that nothing is taken back twice.
alter table movement add column undoes bigint;
-- What was lost had cost, worked out at that time by the prices of that time; or codes of what had no price.
alter table movement add column cost numeric(18,6);
alter table movement add column unpriced varchar(2000);
alter table movement add constraint uq_movement_undoes unique (kitchen_id, lot_id, undoes);
create index ix_movement_change on movement (kitchen_id, change_number);
create index ix_movement_at on movement (kitchen_id, at);
