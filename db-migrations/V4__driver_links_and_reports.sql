-- The driver's page of a job. Only a digest of the token is kept: who reads this table cannot open the page.
create table driver_link (
    id         uuid                     not null primary key,
    shop_id    uuid                     not null references shop,
    job_id     uuid                     not null references job,
    token_hash varchar(64)              not null,
    issued_at  timestamp with time zone not null,
    expires_at timestamp with time zone not null,
    revoked_at timestamp with time zone,
    constraint driver_link_token_once unique (token_hash)
);
create index driver_link_by_job on driver_link (job_id);

-- Drives that came in through a driver's page.
create table driver_logged_drive (
    drive_id  uuid                     not null primary key references drive,
    link_id   uuid                     not null references driver_link,
    logged_at timestamp with time zone not null
);
create index driver_logged_drive_by_link on driver_logged_drive (link_id);

-- Reports as they left the house: the facts, their fingerprint, and the very bytes of the PDF.
create table issued_report (
    id          uuid                     not null primary key,
    shop_id     uuid                     not null references shop,
    job_id      uuid                     not null references job,
    fingerprint varchar(64)              not null,
    issued_at   timestamp with time zone not null,
    state       varchar(10)              not null,
    facts       text                     not null,
    pdf_digest  varchar(64)              not null,
    pdf         ${bytes}                 not null,
    constraint issued_report_once unique (shop_id, fingerprint)
);
create index issued_report_by_job on issued_report (job_id, issued_at);
