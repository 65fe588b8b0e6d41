-- Pictures that belong to a repair: what a meter showed, the old part. Drawn anew when they came in, so that nothing is kept of what a
-- camera writes beside the picture.
create table photo (
    id        uuid                     not null primary key,
    shop_id   uuid                     not null references shop,
    job_id    uuid                     not null references job,
    repair_id uuid                     not null references repair,
    about     varchar(200),
    caption   varchar(200),
    added_at  timestamp with time zone not null,
    width     integer                  not null,
    height    integer                  not null,
    digest    varchar(64)              not null,
    jpeg      ${bytes}                 not null,
    constraint photo_once unique (repair_id, digest),
    constraint photo_size check (width > 0 and height > 0)
);
create index photo_by_job on photo (job_id, added_at);
