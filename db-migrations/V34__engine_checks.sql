-- One script for H2 (PostgreSQL mode) and PostgreSQL.
-- Checks with the engine running: a warm-up where no state is named, else a signal that stays in a band in that state.
create table engine_check (
    id               uuid                     not null primary key,
    shop_id          uuid                     not null references shop,
    job_id           uuid                     not null references job,
    fault_id         uuid                     not null references fault,
    stated_at        timestamp with time zone not null,
    source           varchar(300),
    signal           varchar(40)              not null,
    lower_limit      double precision,
    upper_limit      double precision,
    seconds          integer                  not null,
    engine_state     varchar(20),
    speed_min        double precision,
    speed_max        double precision,
    start_max        double precision,
    ambient_min      double precision,
    ambient_max      double precision,
    withdrawn_at     timestamp with time zone,
    withdrawn_reason varchar(500)
);

create index engine_check_by_job on engine_check (job_id);

-- The runs that were chosen for a check, each with what its log told of it; the latest of each side counts, the others stay.
create table engine_check_run (
    check_id  uuid                     not null references engine_check,
    position  integer                  not null,
    side      varchar(10)              not null,
    drive_id  uuid                     not null,
    revision  integer                  not null,
    start_at  timestamp with time zone not null,
    chosen_at timestamp with time zone not null,
    told      text                     not null,
    primary key (check_id, position)
);

alter table engine_check add constraint engine_check_engine_state check (engine_state in ('IDLE', 'CRUISE', 'RUNNING'));
alter table engine_check add constraint engine_check_limits check (lower_limit <= upper_limit);
alter table engine_check add constraint engine_check_has_limit check (lower_limit is not null or upper_limit is not null);
alter table engine_check add constraint engine_check_warm_up check (engine_state is not null or (signal = 'COOLANT' and lower_limit is not null and start_max is not null and start_max < lower_limit));
alter table engine_check add constraint engine_check_seconds check (seconds >= 1);
alter table engine_check add constraint engine_check_speed check (speed_min <= speed_max);
alter table engine_check add constraint engine_check_ambient check (ambient_min <= ambient_max);
alter table engine_check add constraint engine_check_withdrawn check ((withdrawn_at is null) = (withdrawn_reason is null));
alter table engine_check_run add constraint engine_check_run_side check (side in ('BEFORE', 'AFTER'));
alter table engine_check_run add constraint engine_check_run_revision check (revision >= 1);
