-- Secrets that are used again are sealed with a key outside the database; those that are only recognised are kept as digests. The rows
-- of before are changed by the steps V51 and V52 in Java, which have the key: of stored answers, and of what telling keeps.
alter table webhook_endpoint alter column secret set data type varchar(300);
alter table webhook_endpoint alter column previous_secret set data type varchar(300);
alter table calendar_link rename column token to token_hash;
alter table mail_recipient add column token_hash varchar(64);
alter table mail_recipient add column sealed_token varchar(300);

-- How long the oldest message waits is asked often.
create index delivery_undelivered on delivery (state, created_at);
