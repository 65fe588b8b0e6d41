-- One script for H2 (PostgreSQL mode) and PostgreSQL. ${bytes} is the type for long binary data: binary large object or bytea.

create table shop (
    id         uuid                     not null primary key,
    name       varchar(200)             not null,
    created_at timestamp with time zone not null
);

insert into shop (id, name, created_at)
values ('00000000-0000-4000-8000-000000000001', 'Default shop', timestamp with time zone '2026-01-01 00:00:00+00:00');

create table vehicle (
    id          uuid                     not null primary key,
    shop_id     uuid                     not null references shop,
    vin         varchar(17),
    plate       varchar(20),
    description varchar(200)             not null,
    model_year  integer,
    ignition    varchar(20)              not null,
    created_at  timestamp with time zone not null,
    version     integer                  not null,
    constraint vehicle_vin_once_per_shop unique (shop_id, vin)
);
create index vehicle_by_creation on vehicle (shop_id, created_at, id);

create table job (
    id           uuid                     not null primary key,
    shop_id      uuid                     not null references shop,
    vehicle_id   uuid                     not null references vehicle,
    reference    varchar(100),
    complaint    varchar(2000),
    opened_at    timestamp with time zone not null,
    state        varchar(10)              not null,
    closed_at    timestamp with time zone,
    close_reason varchar(2000),
    scan         text,
    version      integer                  not null
);
create index job_by_opening on job (shop_id, opened_at, id);
create index job_by_vehicle on job (vehicle_id);

-- Every closing and reopening, in order.
create table job_state_change (
    job_id     uuid                     not null references job,
    position   integer                  not null,
    changed_at timestamp with time zone not null,
    state      varchar(10)              not null,
    reason     varchar(2000),
    primary key (job_id, position)
);

-- The standing_ columns are a cache: they can be computed again from repairs and submissions at any time.
create table fault (
    id                uuid             not null primary key,
    shop_id           uuid             not null references shop,
    job_id            uuid             not null references job,
    position          integer          not null,
    code              varchar(8)       not null,
    monitor_group     varchar(40)      not null,
    trips             varchar(10)      not null,
    required_passes   integer          not null,
    weakest_evidence  varchar(30)      not null,
    freeze_speed      double precision,
    freeze_load       double precision,
    freeze_coolant    double precision,
    standing_state    varchar(30)      not null,
    standing_words    varchar(300)     not null,
    standing_passes   integer,
    standing_decided  boolean          not null,
    standing_comeback boolean          not null
);
create index fault_by_job on fault (job_id);

create table fault_condition (
    fault_id    uuid             not null references fault,
    position    integer          not null,
    quantity    varchar(30)      not null,
    lower_limit double precision,
    upper_limit double precision,
    primary key (fault_id, position)
);

create table repair (
    id            uuid                     not null primary key,
    shop_id       uuid                     not null references shop,
    job_id        uuid                     not null references job,
    performed_at  timestamp with time zone not null,
    recorded_at   timestamp with time zone not null,
    description   varchar(2000)            not null,
    technician    varchar(100),
    codes_cleared boolean                  not null,
    scan_before   text,
    scan_after    text
);
create index repair_by_job on repair (job_id);

create table repair_fault (
    repair_id uuid not null references repair,
    fault_id  uuid not null references fault,
    primary key (repair_id, fault_id)
);

create table repair_part (
    repair_id uuid         not null references repair,
    position  integer      not null,
    part      varchar(200) not null,
    primary key (repair_id, position)
);

create table measurement (
    repair_id           uuid         not null references repair,
    position            integer      not null,
    quantity            varchar(100) not null,
    point               varchar(200),
    unit                varchar(20)  not null,
    expected_min        double precision,
    expected_max        double precision,
    reading_before      varchar(40),
    reading_after       varchar(40),
    test_leads_verified boolean,
    primary key (repair_id, position)
);

-- One row is one accepted submission, complete in itself: the drives can be rebuilt from these rows alone.
create table submission (
    id           uuid                     not null primary key,
    shop_id      uuid                     not null references shop,
    vehicle_id   uuid                     not null references vehicle,
    drive_id     uuid                     not null,
    revision     integer                  not null,
    received_at  timestamp with time zone not null,
    content_type varchar(100)             not null,
    digest       varchar(64)              not null,
    original     ${bytes}                 not null,
    constraint submission_revision_once unique (drive_id, revision)
);
create index submission_by_content on submission (vehicle_id, digest);

create table drive (
    id          uuid                     not null primary key,
    shop_id     uuid                     not null references shop,
    vehicle_id  uuid                     not null references vehicle,
    start_at    timestamp with time zone not null,
    until_at    timestamp with time zone not null,
    received_at timestamp with time zone not null,
    revision    integer                  not null
);
create index drive_by_start on drive (vehicle_id, start_at, id);

create table idempotency_key (
    shop_id      uuid                     not null references shop,
    name         varchar(255)             not null,
    fingerprint  varchar(64)              not null,
    created_at   timestamp with time zone not null,
    status       integer,
    content_type varchar(100),
    location     varchar(300),
    etag         varchar(50),
    body         text,
    primary key (shop_id, name)
);
create index idempotency_key_by_age on idempotency_key (created_at);
