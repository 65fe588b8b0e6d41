-- The words of a standing are put on where it is read, in the language and for the person who reads. The column stays for instances of
-- the version before that still write it.
alter table fault alter column standing_words drop not null;
