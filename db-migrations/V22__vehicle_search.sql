-- What the vehicles are found by: every end of everything that names a vehicle, in small letters, so that a part of it is the beginning
-- of a row.
create table vehicle_part (
    vehicle_id uuid        not null references vehicle,
    part       varchar(40) ${by_bytes} not null,
    shop_id    uuid        not null references shop,
    primary key (vehicle_id, part)
);

create table place (n integer not null primary key);

insert into place
select a.d + 10 * b.d + 100 * c.d + 1
from (values (0), (1), (2), (3), (4), (5), (6), (7), (8), (9)) a(d)
cross join (values (0), (1), (2), (3), (4), (5), (6), (7), (8), (9)) b(d)
cross join (values (0), (1)) c(d);

insert into vehicle_part (vehicle_id, part, shop_id)
select distinct t.id, substring(t.text from p.n for 40) part, t.shop_id
from (select id, shop_id, lower(description) text from vehicle
      union all select id, shop_id, lower(plate) from vehicle where plate is not null
      union all select id, shop_id, lower(vin) from vehicle where vin is not null) t
join place p on p.n <= char_length(t.text)
where substring(t.text from p.n for 1) not in (' ', '
', '	')
order by 1, 2;

drop table place;

create index vehicle_part_by_text on vehicle_part (shop_id, part, vehicle_id);

-- The latest first, as they are listed.
create index vehicle_latest on vehicle (shop_id, created_at desc, id desc);
drop index vehicle_by_creation;
