-- What the pages need: how a shop writes times and units, when a silent job counts as stalled, and whose vehicle it is.
-- One column a statement: both databases take that.
alter table shop add column time_zone varchar(60) default 'UTC' not null;
alter table shop add column units varchar(10) default 'METRIC' not null;
alter table shop add column stall_days integer default 7 not null;

alter table job add column customer varchar(100);

-- Part of the cache: the latest drive that was judged for the fault contradicts itself.
alter table fault add column standing_contradictory boolean default false not null;

create index job_by_state on job (shop_id, state, opened_at, id);
