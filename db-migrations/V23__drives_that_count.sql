-- A name for the drives of a vehicle that count, given anew whenever they change: what an instance keeps of them in memory is good
-- as long as the name is. Null until they change for the first time.

alter table vehicle add column drives uuid;
