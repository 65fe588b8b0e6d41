package dev.stayfixed.learning;

import dev.stayfixed.jobs.Fault;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.JobMoved;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.judging.VehicleJudged;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.platform.storage.StoredTime;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.telling.Announcer;
import dev.stayfixed.telling.Notices;
import dev.stayfixed.telling.ShopNotices;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.SqlParameterValue;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/** Finds comebacks: by a drive that fails a repair that was proven, or by a new job with the same code or one of the same monitor. */
@Service
public class Comebacks {

    private final Attempts attempts;
    private final Jobs jobs;
    private final Notices notices;
    private final Announcer announcer;
    private final JdbcClient jdbc;
    private final CurrentShop shop;
    private final Durably durably;

    Comebacks(
            Attempts attempts,
            Jobs jobs,
            Notices notices,
            Announcer announcer,
            JdbcClient jdbc,
            CurrentShop shop,
            Durably durably) {
        this.attempts = attempts;
        this.jobs = jobs;
        this.notices = notices;
        this.announcer = announcer;
        this.jdbc = jdbc;
        this.shop = shop;
        this.durably = durably;
    }

    /** What came back in this job, and what of this job came back elsewhere; the earliest first. */
    public List<Comeback> ofJob(UUID jobId) {
        return durably.read(() -> {
            jobs.get(jobId);
            return jdbc.sql("""
                            select * from comeback where shop_id = ? and (job_id = ? or earlier_job_id = ?)
                            order by happened_at, id""")
                    .params(shop.id(), jobId, jobId)
                    .query(Comebacks::comeback)
                    .list();
        });
    }

    /** Which of these jobs a comeback shows in. */
    public Set<UUID> among(Collection<UUID> jobIds) {
        return jobIds.isEmpty()
                ? Set.of()
                : durably.read(() -> jdbc.sql(
                                "select distinct job_id from comeback where shop_id = :shop and job_id in (:jobs)")
                        .param("shop", shop.id())
                        .param("jobs", jobIds)
                        .query(UUID.class)
                        .set());
    }

    /** Keeps how the attempts went, and what drives show of them: it is found anew each time, as a late drive can take it back. */
    @Order(10)
    @EventListener
    void on(VehicleJudged judged) {
        List<UUID> faults = judged.verdicts().stream()
                .map(verdict -> verdict.faultCase().faultId())
                .toList();
        Set<Comeback> now = shownByDrives(attempts.keep(judged));
        boolean same = keptOfDrives(faults).equals(now);
        if (!same) {
            jdbc.sql("delete from comeback where shop_id = :shop and seen_by = 'DRIVE' and fault_id in (:faults)")
                    .param("shop", shop.id())
                    .param("faults", faults)
                    .update();
            now.forEach(this::insert);
        }
        if (!same || judged.cause() instanceof VehicleJudged.Cause.Replayed) {
            attempts.countComebacks(judged.vehicleId());
        }
    }

    private Set<Comeback> keptOfDrives(List<UUID> faults) {
        return faults.isEmpty()
                ? Set.of()
                : jdbc.sql(
                                "select * from comeback where shop_id = :shop and seen_by = 'DRIVE' and fault_id in (:faults)")
                        .param("shop", shop.id())
                        .param("faults", faults)
                        .query(Comebacks::comeback)
                        .set();
    }

    private Set<Comeback> shownByDrives(List<Attempt> all) {
        List<Attempt> failed = all.stream()
                .filter(a -> a.failedAt()
                        .filter(failure -> wasTakenForFixed(a, failure))
                        .isPresent())
                .toList();
        if (failed.isEmpty()) {
            return Set.of();
        }
        ShopNotices window = notices.ofShop();
        return failed.stream()
                .filter(a -> isWithin(window, a.daysFollowed(), a.kmToFailure()))
                .map(a -> new Comeback(
                        a.jobId(),
                        a.faultId(),
                        a.jobId(),
                        a.faultId(),
                        Comeback.SeenBy.DRIVE,
                        true,
                        a.failedAt().orElseThrow(),
                        a.daysFollowed(),
                        a.kmToFailure()))
                .collect(Collectors.toSet());
    }

    /** Proven, or the job was closed all the same. */
    private boolean wasTakenForFixed(Attempt a, Instant before) {
        return a.provenAt().isPresent()
                || jobs.get(a.jobId()).closedAt().filter(before::isAfter).isPresent();
    }

    @EventListener
    void on(JobMoved moved) {
        if (moved.step() != JobMoved.Step.OPENED && moved.step() != JobMoved.Step.FAULT_ADDED) {
            return;
        }
        Job job = jobs.get(moved.jobId());
        List<Attempt> earlier = attempts.ofVehicle(moved.vehicleId()).stream()
                .filter(a -> !a.jobId().equals(job.id()) && !a.performedAt().isAfter(job.openedAt()))
                .toList();
        job.faults().forEach(fault -> look(job, fault, earlier));
        attempts.countComebacks(moved.vehicleId());
    }

    /** Only the latest earlier repair that is related counts, so that one fault is one comeback. */
    private void look(Job job, Fault fault, List<Attempt> earlier) {
        ShopNotices window = notices.ofShop();
        String code = fault.terms().code().text();
        for (int i = earlier.size() - 1; i >= 0; i--) {
            Attempt a = earlier.get(i);
            boolean same = a.code().equals(code);
            if (!same && !a.group().equals(fault.terms().group().name())) {
                continue;
            }
            OptionalDouble km = a.kmFollowed() > 0 ? OptionalDouble.of(a.kmFollowed()) : OptionalDouble.empty();
            double days = a.days(job.openedAt());
            if (isWithin(window, days, km) && !isKnown(fault.id())) {
                insert(new Comeback(
                        job.id(),
                        fault.id(),
                        a.jobId(),
                        a.faultId(),
                        Comeback.SeenBy.NEW_JOB,
                        same,
                        job.openedAt(),
                        days,
                        km));
                announcer.cameBack(job.id(), reason(a, code, days), "comeback:" + fault.id());
            }
            return;
        }
    }

    private static Reason reason(Attempt earlier, String code, double days) {
        return Reason.of(
                earlier.code().equals(code) ? ComebackReason.BACK_AFTER : ComebackReason.RELATED_TO,
                Part.verbatim(code),
                Part.verbatim(earlier.code()),
                Part.count(Math.round(days)),
                Part.verbatim(earlier.repair()));
    }

    /** Distance counts only as far as it is known: what is unknown excuses nothing. */
    private static boolean isWithin(ShopNotices window, double days, OptionalDouble km) {
        return days <= window.comebackDays()
                && (km.isEmpty()
                        || window.comebackDistance().isEmpty()
                        || km.getAsDouble() <= window.comebackDistance().getAsDouble());
    }

    private boolean isKnown(UUID faultId) {
        return jdbc.sql("select count(*) from comeback where shop_id = ? and fault_id = ? and seen_by = 'NEW_JOB'")
                        .params(shop.id(), faultId)
                        .query(Long.class)
                        .single()
                > 0;
    }

    private void insert(Comeback c) {
        jdbc.sql("""
                        insert into comeback (id, shop_id, job_id, fault_id, earlier_job_id, earlier_fault_id, seen_by, same_code,
                                              happened_at, days_since, km_since)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(UUID.randomUUID(), shop.id(), c.jobId(), c.faultId(), c.earlierJobId(), c.earlierFaultId())
                .params(c.seenBy().name(), c.sameCode(), StoredTime.of(c.happenedAt()), c.daysSince())
                .param(new SqlParameterValue(
                        Types.DOUBLE, c.kmSince().isPresent() ? c.kmSince().getAsDouble() : null))
                .update();
    }

    private static Comeback comeback(ResultSet row, int number) throws SQLException {
        @Nullable Double km = row.getObject("km_since", Double.class);
        return new Comeback(
                row.getObject("job_id", UUID.class),
                row.getObject("fault_id", UUID.class),
                row.getObject("earlier_job_id", UUID.class),
                row.getObject("earlier_fault_id", UUID.class),
                Comeback.SeenBy.valueOf(row.getString("seen_by")),
                row.getBoolean("same_code"),
                StoredTime.in(row, "happened_at"),
                row.getDouble("days_since"),
                km == null ? OptionalDouble.empty() : OptionalDouble.of(km));
    }
}
