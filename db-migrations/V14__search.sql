-- What the jobs are found by: every end of everything that names a job or its vehicle, in small letters, so that a part of it is the
-- beginning of a row. Of the complaint, which is prose, only the ends that begin with a word.
create table job_part (
    job_id  uuid        not null references job,
    part    varchar(40) ${by_bytes} not null,
    shop_id uuid        not null references shop,
    state   varchar(10) not null,
    primary key (job_id, part)
);

create table place (n integer not null primary key);

insert into place
select a.d + 10 * b.d + 100 * c.d + 1000 * e.d + 1
from (values (0), (1), (2), (3), (4), (5), (6), (7), (8), (9)) a(d)
cross join (values (0), (1), (2), (3), (4), (5), (6), (7), (8), (9)) b(d)
cross join (values (0), (1), (2), (3), (4), (5), (6), (7), (8), (9)) c(d)
cross join (values (0), (1)) e(d);

insert into job_part (job_id, part, shop_id, state)
select distinct t.job_id, substring(t.text from p.n for 40) part, t.shop_id, t.state
from (select id job_id, shop_id, state, lower(reference) text, false prose from job where reference is not null
      union all select id, shop_id, state, lower(customer), false from job where customer is not null
      union all select id, shop_id, state, lower(complaint), true from job where complaint is not null
      union all select f.job_id, f.shop_id, j.state, lower(f.code), false from fault f join job j on j.id = f.job_id
      union all select j.id, j.shop_id, j.state, lower(v.description), false from job j join vehicle v on v.id = j.vehicle_id
      union all select j.id, j.shop_id, j.state, lower(v.plate), false from job j join vehicle v on v.id = j.vehicle_id
                where v.plate is not null
      union all select j.id, j.shop_id, j.state, lower(v.vin), false from job j join vehicle v on v.id = j.vehicle_id
                where v.vin is not null) t
join place p on p.n <= char_length(t.text)
where substring(t.text from p.n for 1) not in (' ', '
', '	')
  and (not t.prose or p.n = 1 or substring(t.text from p.n - 1 for 1) in (' ', '
', '	'))
order by 1, 2;

drop table place;

create index job_part_by_text on job_part (shop_id, state, part, job_id);

-- The latest first, as they are listed.
create index job_latest on job (shop_id, opened_at desc, id desc);
create index job_latest_by_state on job (shop_id, state, opened_at desc, id desc);
drop index job_by_opening;
drop index job_by_state;
