package dev.stayfixed.intake;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Standings;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** Verdicts with their evidence, judged afresh from what is stored. */
@Service
public class Verdicts {

    private final Jobs jobs;
    private final Standings standings;
    private final Judging judging;
    private final Durably durably;

    Verdicts(Jobs jobs, Standings standings, Judging judging, Durably durably) {
        this.jobs = jobs;
        this.standings = standings;
        this.judging = judging;
        this.durably = durably;
    }

    public List<FaultVerdict> ofJob(UUID jobId) {
        return durably.read(() -> {
            Job job = jobs.get(jobId);
            return judging.judge(standings.ofJob(jobId), job.vehicleId());
        });
    }

    /** Every fault of every job of the vehicle. */
    public List<FaultVerdict> ofVehicle(UUID vehicleId) {
        return durably.read(() -> judging.judge(standings.ofVehicle(vehicleId), vehicleId));
    }

    public FaultVerdict ofFault(UUID jobId, UUID faultId) {
        return ofJob(jobId).stream()
                .filter(v -> v.faultCase().faultId().equals(faultId))
                .findFirst()
                .orElseThrow(() -> Refused.notFound("fault of this job", faultId));
    }

    /** What the drives of a vehicle showed that nobody knew before, and that still stands; the earliest first. */
    public List<Alert> alerts(UUID vehicleId) {
        return durably.read(() -> judging.standingAlerts(vehicleId));
    }
}
