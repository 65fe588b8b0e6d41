-- What puts the open jobs in order: a copy, written again whenever a job or its vehicle's drives change.
-- need is what a person has to do apart from silence; whether a job has stalled depends on the day, so news_at stands here instead.
create table open_job (
    job_id     uuid                     not null primary key references job,
    shop_id    uuid                     not null references shop,
    vehicle_id uuid                     not null references vehicle,
    need       varchar(20)              not null,
    can_stall  boolean                  not null,
    news_at    timestamp with time zone not null
);

insert into open_job (job_id, shop_id, vehicle_id, need, can_stall, news_at)
select n.job_id, n.shop_id, n.vehicle_id, n.need, n.need not in ('CAME_BACK', 'READY_TO_CLOSE') can_stall,
       greatest(n.opened_at, coalesce(n.repaired_at, n.opened_at), coalesce(n.driven_at, n.opened_at)) news_at
from (select j.id job_id, j.shop_id, j.vehicle_id, j.opened_at,
             (select max(r.performed_at) from repair r where r.job_id = j.id) repaired_at,
             (select max(d.start_at) from drive d where d.vehicle_id = j.vehicle_id) driven_at,
             case when f.back > 0 then 'CAME_BACK'
                  when f.fixed = f.faults then 'READY_TO_CLOSE'
                  when f.contradictory > 0 then 'CONTRADICTORY'
                  when f.failed_once > 0 then 'FAILED_ONCE'
                  when f.awaiting > 0 then 'REPAIR_DUE'
                  else 'WAITING' end need
      from job j
      join (select job_id,
                   count(*) faults,
                   sum(case when standing_state = 'CONFIRMED_FIXED' then 1 else 0 end) fixed,
                   sum(case when standing_state = 'RECURRED' or standing_comeback then 1 else 0 end) back,
                   sum(case when standing_state = 'FAILED_ONCE' then 1 else 0 end) failed_once,
                   sum(case when standing_contradictory then 1 else 0 end) contradictory,
                   sum(case when standing_state = 'AWAITING_REPAIR' then 1 else 0 end) awaiting
            from fault group by job_id) f on f.job_id = j.id
      where j.state = 'OPEN') n;

create index open_job_by_need on open_job (shop_id, need, news_at, job_id);
create index open_job_by_silence on open_job (shop_id, can_stall, news_at, job_id);
create index open_job_by_vehicle on open_job (vehicle_id);
