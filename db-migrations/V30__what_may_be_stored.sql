-- One script for H2 (PostgreSQL mode) and PostgreSQL.
-- What no row may say, whoever writes it. A test holds the words against the types that write them.

alter table vehicle add constraint vehicle_ignition check (ignition in ('SPARK', 'COMPRESSION'));

alter table shop add constraint shop_units check (units in ('METRIC', 'US'));
alter table shop add constraint shop_stall_days check (stall_days between 1 and 365);

alter table job add constraint job_state check (state in ('OPEN', 'CLOSED'));
alter table job add constraint job_closed_at check ((state = 'CLOSED') = (closed_at is not null));
alter table job_state_change add constraint job_state_change_state check (state in ('OPEN', 'CLOSED'));
alter table job_part add constraint job_part_state check (state in ('OPEN', 'CLOSED'));
alter table open_job add constraint open_job_need check (need in ('CAME_BACK', 'READY_TO_CLOSE', 'CONTRADICTORY', 'FAILED_ONCE', 'REPAIR_DUE', 'WAITING'));

alter table fault add constraint fault_trips check (trips in ('ONE', 'TWO'));
alter table fault add constraint fault_weakest_evidence check (weakest_evidence in ('STATUS_BYTE', 'TEST_RESULT', 'CYCLE_READINESS', 'IN_USE_COUNTER', 'READINESS', 'MIL_OFF', 'ENABLING_CONDITIONS', 'DRIVEN'));
alter table fault add constraint fault_standing_state check (standing_state in ('AWAITING_REPAIR', 'WAITING_FOR_FIRST_TRIP', 'PASSING', 'CONFIRMED_FIXED', 'FAILED_ONCE', 'RECURRED'));
alter table fault add constraint fault_conditions_origin check (conditions_origin in ('SERVICE_INFORMATION', 'TYPICAL_ADOPTED'));
alter table fault add constraint fault_required_passes check (required_passes >= 1);
alter table fault_condition add constraint fault_condition_limits check (lower_limit <= upper_limit);
alter table fault_intermittence add constraint fault_intermittence_counts check (failed between 0 and monitored);
alter table fault_intermittence add constraint fault_intermittence_confidence check (confidence >= 0 and confidence <= 1);

alter table measurement add constraint measurement_bench_check check (bench_check in ('SUPPLY', 'GROUND', 'PART', 'LEADS', 'OTHER'));
alter table measurement add constraint measurement_expected check (expected_min <= expected_max);

alter table submission add constraint submission_revision check (revision >= 1);
alter table submission add constraint submission_log_with_mapping check ((log_type is null) = (log_mapping is null));
alter table drive add constraint drive_revision check (revision >= 1);
alter table drive add constraint drive_until_at check (until_at >= start_at);

alter table issued_report add constraint issued_report_state check (state in ('FINAL', 'INTERIM'));
alter table delivery add constraint delivery_state check (state in ('PENDING', 'DELIVERED', 'FAILED', 'CANCELLED'));
alter table delivery add constraint delivery_attempts check (attempts >= 0);
alter table driver_link add constraint driver_link_expires_at check (expires_at > issued_at);
alter table comeback add constraint comeback_seen_by check (seen_by in ('DRIVE', 'NEW_JOB'));
alter table attempt_outcome add constraint attempt_outcome_state check (state in ('AWAITING_REPAIR', 'WAITING_FOR_FIRST_TRIP', 'PASSING', 'CONFIRMED_FIXED', 'FAILED_ONCE', 'RECURRED'));

-- Copies go with the drive that they are of.
delete from drive_condition where not exists (select 1 from drive d where d.id = drive_condition.drive_id);
alter table drive_condition add constraint drive_condition_of_drive foreign key (drive_id) references drive on delete cascade;
delete from drive_picture where not exists (select 1 from drive d where d.id = drive_picture.drive_id);
alter table drive_picture add constraint drive_picture_of_drive foreign key (drive_id) references drive on delete cascade;
