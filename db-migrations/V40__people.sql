-- Who may use the service. Of passwords, sessions, links and tokens only digests are kept.
create table person (
    id            uuid                     not null primary key,
    mail          varchar(254)             not null,
    name          varchar(100)             not null,
    password_hash varchar(300),
    created_at    timestamp with time zone not null,
    constraint person_mail_once unique (mail)
);

create table membership (
    person_id uuid                     not null references person on delete cascade,
    shop_id   uuid                     not null references shop,
    role      varchar(20)              not null,
    since     timestamp with time zone not null,
    primary key (person_id, shop_id),
    constraint membership_role check (role in ('READER', 'TECHNICIAN', 'OWNER'))
);
create index membership_by_shop on membership (shop_id);

-- What is used once: the code of the first owner, an invitation, a link that signs in.
create table entry_link (
    token_hash varchar(64)              not null primary key,
    purpose    varchar(20)              not null,
    person_id  uuid references person on delete cascade,
    expires_at timestamp with time zone not null,
    constraint entry_link_purpose check (purpose in ('FIRST_OWNER', 'INVITATION', 'SIGN_IN')),
    constraint entry_link_person check ((purpose = 'FIRST_OWNER') = (person_id is null))
);

create table api_token (
    id         uuid                     not null primary key,
    shop_id    uuid                     not null references shop,
    token_hash varchar(64)              not null,
    name       varchar(100)             not null,
    scope      varchar(20)              not null,
    made_at    timestamp with time zone not null,
    expires_at timestamp with time zone not null,
    used_at    timestamp with time zone,
    ended_at   timestamp with time zone,
    constraint api_token_once unique (token_hash),
    constraint api_token_scope check (scope in ('READ', 'DRIVES', 'WORK'))
);
create index api_token_by_shop on api_token (shop_id, made_at);

-- Sessions of browsers, by the digest of what the cookie holds; columns as Spring Session names them.
create table web_session (
    primary_id            char(36)    not null primary key,
    session_id            varchar(64) not null,
    creation_time         bigint      not null,
    last_access_time      bigint      not null,
    max_inactive_interval integer     not null,
    expiry_time           bigint      not null,
    principal_name        varchar(100),
    constraint web_session_once unique (session_id)
);
create index web_session_by_expiry on web_session (expiry_time);
create index web_session_by_person on web_session (principal_name);

create table web_session_attributes (
    session_primary_id char(36)     not null references web_session on delete cascade,
    attribute_name     varchar(200) not null,
    attribute_bytes    bytea        not null,
    primary key (session_primary_id, attribute_name)
);
