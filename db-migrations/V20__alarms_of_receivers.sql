-- One script for H2 (PostgreSQL mode) and PostgreSQL.

-- What waits for one receiver, in its order.
create index delivery_waiting on delivery (channel, target, state, position);

-- One alarm for each receiver that something waits for, instead of one for each message.
delete from scheduled_tasks where task_name = 'deliver';
insert into scheduled_tasks (task_name, task_instance, execution_time, picked, version)
select 'deliver', channel || ':' || target, min(next_at), false, 1
from delivery where state = 'PENDING' group by channel, target;
