-- A drive that a person left out of the count: it stays stored, and is not judged until it is taken in again.
-- Not part of the drive's row, which can be computed from the submissions; this cannot.
create table drive_left_out (
    id          uuid                     not null primary key,
    shop_id     uuid                     not null references shop,
    vehicle_id  uuid                     not null references vehicle,
    drive_id    uuid                     not null,
    reason      varchar(500)             not null,
    left_out_at timestamp with time zone not null,
    taken_in_at timestamp with time zone
);

create index drive_left_out_by_vehicle on drive_left_out (vehicle_id, drive_id);
