package dev.stayfixed.jobs;

import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** The checks with the engine running that shops stated for faults. */
@Service
public class EngineChecks {

    /** Checks of one job. */
    private static final int MOST = 50;

    /** Runs of one check. */
    private static final int MOST_RUNS = 50;

    private final StoredEngineChecks rows;
    private final Jobs jobs;
    private final Durably durably;
    private final Clock clock;

    EngineChecks(StoredEngineChecks rows, Jobs jobs, Durably durably, Clock clock) {
        this.rows = rows;
        this.jobs = jobs;
        this.durably = durably;
        this.clock = clock;
    }

    /** Of all jobs of the vehicle, in the order in which they were stated. */
    public List<EngineCheck> ofVehicle(UUID vehicleId) {
        return durably.read(() ->
                rows.ofVehicle(vehicleId).stream().map(StoredEngineCheck::facts).toList());
    }

    public EngineCheck get(UUID jobId, UUID checkId) {
        return durably.read(() -> row(jobId, checkId).facts());
    }

    /**
     * States a check.
     *
     * @throws Refused when the job is closed, has no such fault or too many checks
     */
    public EngineCheck state(UUID jobId, EngineCheck.Stated stated) {
        return durably.write(() -> {
            StoredJob job = open(jobId);
            UUID faultId =
                    job.fault(stated.faultId().orElseGet(() -> only(job))).id();
            if (rows.countByJobId(jobId) >= MOST) {
                throw Refused.content(new Mistake("faultId", MOST + " checks", "at most " + MOST + " in one job"));
            }
            job.changed();
            return rows.save(new StoredEngineCheck(jobId, faultId, stated, clock.instant()))
                    .facts();
        });
    }

    private static UUID only(StoredJob job) {
        if (job.faults().size() != 1) {
            throw Refused.content(
                    new Mistake("faultId", null, "one of the " + job.faults().size() + " faults of the job"));
        }
        return job.faults().get(0).id();
    }

    /** Takes a run; of its side it is the one that counts from now on. */
    public EngineCheck choose(UUID jobId, UUID checkId, EngineCheck.Chosen run) {
        return durably.write(() -> {
            StoredJob job = open(jobId);
            StoredEngineCheck row = standing(jobId, checkId);
            if (row.facts().runs().size() >= MOST_RUNS) {
                throw Refused.content(
                        new Mistake("driveId", MOST_RUNS + " runs", "at most " + MOST_RUNS + " of one check"));
            }
            row.choose(run);
            job.changed();
            return row.facts();
        });
    }

    /** The check counts no more; it stays on file with the reason. */
    public EngineCheck withdraw(UUID jobId, UUID checkId, String reason) {
        return durably.write(() -> {
            StoredJob job = open(jobId);
            StoredEngineCheck row = standing(jobId, checkId);
            row.withdraw(clock.instant(), reason);
            job.changed();
            return row.facts();
        });
    }

    private StoredJob open(UUID jobId) {
        StoredJob job = jobs.held(jobId);
        job.refuseWhenClosed();
        return job;
    }

    private StoredEngineCheck standing(UUID jobId, UUID checkId) {
        StoredEngineCheck row = row(jobId, checkId);
        if (row.facts().withdrawn().isPresent()) {
            throw Refused.content(new Mistake("check", "one that was withdrawn", "one that still counts"));
        }
        return row;
    }

    private StoredEngineCheck row(UUID jobId, UUID checkId) {
        return rows.findByIdAndJobId(checkId, jobId).orElseThrow(() -> Refused.notFound("check of this job", checkId));
    }
}
