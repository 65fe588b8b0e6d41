-- Links by which somebody outside the shop reads the report on a job. Only a digest of the token is kept.
create table report_link (
    id         uuid                     not null primary key,
    shop_id    uuid                     not null references shop,
    job_id     uuid                     not null references job,
    token_hash varchar(64)              not null,
    issued_at  timestamp with time zone not null,
    expires_at timestamp with time zone not null,
    revoked_at timestamp with time zone,
    constraint report_link_token_once unique (token_hash),
    constraint report_link_expires_at check (expires_at > issued_at)
);
create index report_link_by_job on report_link (job_id);
