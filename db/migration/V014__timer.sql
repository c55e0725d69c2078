-- For how long a timer was set, or put off.
alter table tick add column minutes integer;
