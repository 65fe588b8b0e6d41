-- The recorded log of a submission, as it was sent; text is packed. In pieces, because a long value would have to be whole in memory.
alter table submission add column log_type varchar(50);
alter table submission add column log_mapping text;

create table submission_part (
    submission_id uuid     not null references submission,
    position      integer  not null,
    content       ${bytes} not null,
    primary key (submission_id, position)
);

-- What was read from the log of the latest submission: a cache, which can be computed again.
alter table drive add column log_facts text;
alter table drive add column log_facts_version integer;
alter table drive add column log_facts_revision integer;

-- How to read the logs of one program: confirmed once, then found by the headers.
create table log_mapping (
    id          uuid                     not null primary key,
    shop_id     uuid                     not null references shop,
    name        varchar(200)             not null,
    fingerprint varchar(64)              not null,
    headers     text                     not null,
    mapping     text                     not null,
    created_at  timestamp with time zone not null,
    constraint log_mapping_once unique (shop_id, fingerprint)
);

-- Conditions of a fault that recorded signals are held against.
alter table fault add column conditions_key varchar(64);
alter table fault add column conditions_origin varchar(30);
alter table fault add column conditions_source varchar(300);
alter table fault add column conditions_text text;

-- What the log of a drive made of a set of conditions: a cache, which can be computed again.
create table drive_condition (
    drive_id uuid        not null,
    set_key  varchar(64) not null,
    revision integer     not null,
    version  integer     not null,
    report   text        not null,
    primary key (drive_id, set_key)
);
