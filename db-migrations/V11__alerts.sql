-- Who wants to know that a fault is back wants to know of the lamp and of new codes, too.
update shop_notices set technician_kinds = technician_kinds || ',LAMP_ON,NEW_CODE,ALERT_TAKEN_BACK'
where technician_kinds like '%RECURRED%';

update job_notices set technician_kinds = technician_kinds || ',LAMP_ON,NEW_CODE,ALERT_TAKEN_BACK'
where technician_kinds like '%RECURRED%';
