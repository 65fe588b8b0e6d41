-- How often a fault failed before its repair; a fault without a row is one of which nothing is known.
create table fault_intermittence (
    fault_id   uuid             not null primary key references fault,
    shop_id    uuid             not null references shop,
    failed     integer          not null,
    monitored  integer          not null,
    confidence double precision not null
);
