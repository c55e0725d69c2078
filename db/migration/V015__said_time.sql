-- What was done on paper is entered later: the time at which it was done, as somebody said, and who said so.
-- Both are empty for what was entered as it was done: then it was done when it came, at server_time.
alter table tick add column said_time timestamp with time zone;
alter table tick add column said_by varchar(200);
