-- When the driver's page was first opened by a link: whether the hand-over has arrived.
alter table driver_link add column opened_at timestamp with time zone;
