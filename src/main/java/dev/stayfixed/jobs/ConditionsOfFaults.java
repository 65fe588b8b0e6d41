package dev.stayfixed.jobs;

import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import java.util.List;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;

/** The conditions that recorded drives are held against, fault by fault. */
@Service
public class ConditionsOfFaults {

    private final Jobs jobs;
    private final StoredJobs stored;
    private final Durably durably;
    private final ApplicationEventPublisher events;

    ConditionsOfFaults(Jobs jobs, StoredJobs stored, Durably durably, ApplicationEventPublisher events) {
        this.jobs = jobs;
        this.stored = stored;
        this.durably = durably;
        this.events = events;
    }

    public FaultConditions get(UUID jobId, UUID faultId) {
        return durably.read(() -> {
            StoredJob job = stored.findById(jobId).orElseThrow(() -> Refused.notFound("job", jobId));
            return job.fault(faultId).conditions();
        });
    }

    /** Of every fault of every job of the vehicle. */
    public List<FaultConditions> ofVehicle(UUID vehicleId) {
        return durably.read(() -> stored.ofVehicle(vehicleId).stream()
                .flatMap(job -> job.faults().stream())
                .map(StoredFault::conditions)
                .toList());
    }

    /**
     * Names the first conditions of a fault and judges again.
     *
     * @throws Refused where it has some
     */
    public FaultConditions agree(UUID jobId, UUID faultId, AgreedConditions conditions) {
        return durably.write(() -> {
            StoredJob job = jobs.held(jobId);
            if (job.fault(faultId).conditions().agreed().isPresent()) {
                throw new Refused(
                        ProblemType.CONDITIONS_EXIST,
                        "the fault " + faultId
                                + " already has conditions; replace them with PUT and the ETag of the job, "
                                + IfMatch.tag(job.version()) + ", as If-Match");
            }
            return agreed(job, faultId, conditions);
        });
    }

    public FaultConditions replace(UUID jobId, UUID faultId, IfMatch ifMatch, AgreedConditions conditions) {
        return durably.write(() -> {
            StoredJob job = jobs.held(jobId);
            ifMatch.check(job.version());
            return agreed(job, faultId, conditions);
        });
    }

    private FaultConditions agreed(StoredJob job, UUID faultId, AgreedConditions conditions) {
        job.refuseWhenClosed();
        job.fault(faultId).agree(conditions);
        job.changed();
        stored.flush();
        events.publishEvent(new EvidenceChanged(job.vehicle().id()));
        return job.fault(faultId).conditions();
    }
}
