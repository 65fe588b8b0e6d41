-- In which language the driver of a job is written to: its two or three letters; nothing, where it is that of the shop.
alter table job_notices add column driver_language varchar(35);
