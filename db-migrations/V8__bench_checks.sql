-- What a measurement checks: supply, ground, the part itself, the test leads. Rows from before say nothing of it.
alter table measurement add column bench_check varchar(20);
