package dev.stayfixed.jobs;

import dev.stayfixed.obd.Ignition;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.verification.RepairAttempt;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** What is judged, and where the result is kept. Meant for whoever judges; runs in that one's transaction. */
@Service
public class Standings {

    private final StoredJobs jobs;

    Standings(StoredJobs jobs) {
        this.jobs = jobs;
    }

    public VehicleFaults ofVehicle(UUID vehicleId) {
        List<FaultCase> cases = new ArrayList<>();
        List<FaultConditions> conditions = new ArrayList<>();
        for (StoredJob job : jobs.ofVehicle(vehicleId)) {
            cases.addAll(cases(job));
            job.faults().forEach(fault -> conditions.add(fault.conditions()));
        }
        return new VehicleFaults(cases, conditions);
    }

    public List<FaultCase> ofJob(UUID jobId) {
        return cases(jobs.findById(jobId).orElseThrow(() -> Refused.notFound("job", jobId)));
    }

    private static List<FaultCase> cases(StoredJob job) {
        Map<StoredRepair, RepairAttempt> attempts = new LinkedHashMap<>();
        job.repairs().forEach(repair -> attempts.put(repair, repair.attempt()));
        Ignition ignition = job.ignition();
        FaultCase.OfJob ofJob = job.ofFaults();
        return job.faults().stream()
                .map(fault -> new FaultCase(
                        ofJob,
                        fault.id(),
                        fault.terms(ignition),
                        attempts.entrySet().stream()
                                .filter(e -> e.getKey().isFor(fault.id()))
                                .map(Map.Entry::getValue)
                                .toList(),
                        fault.standing()))
                .toList();
    }

    /**
     * Keeps where a fault stands now; says whether that is new.
     *
     * @param contradictory the latest drive that was judged for it disagrees with itself
     */
    public boolean keep(FaultCase judged, Standing now, boolean contradictory) {
        StoredJob job = jobs.findById(judged.jobId()).orElseThrow();
        StoredFault fault = job.fault(judged.faultId());
        boolean changed = fault.stand(now);
        fault.markContradictory(contradictory);
        if (changed) {
            job.changed();
        }
        return changed;
    }
}
