-- One script for H2 (PostgreSQL mode) and PostgreSQL.

-- What the page of a drive draws of its log: a copy, which is made again from the log where it is missing or of an older version.
create table drive_picture (
    drive_id uuid     not null primary key,
    revision integer  not null,
    version  integer  not null,
    content  ${bytes} not null
);
