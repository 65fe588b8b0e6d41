-- What stood in the record of a repair before somebody put it right: one row a field, kept for good.
create table repair_change (
    repair_id    uuid                     not null references repair,
    position     integer                  not null,
    changed_at   timestamp with time zone not null,
    changed_by   varchar(100),
    reason       varchar(500),
    field        varchar(30)              not null,
    value_before text                     not null,
    value_after  text                     not null,
    primary key (repair_id, position)
);
