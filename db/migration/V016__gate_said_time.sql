-- What was said at a gate on paper is entered later, as with ticks: the time at which it was said, and who typed it.
-- Both are empty for what was entered as it was said: then it was said when it came, at server_time.
alter table gate_entry add column said_time timestamp with time zone;
alter table gate_entry add column said_by varchar(200);
