-- The program that judged a vehicle last: a start judges only those that another one has judged. Null where nothing was judged yet.

alter table vehicle add column judged_by varchar(100);
