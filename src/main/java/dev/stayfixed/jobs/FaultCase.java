package dev.stayfixed.jobs;

import dev.stayfixed.obd.Scan;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.RepairedFault;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * A fault as it is judged.
 *
 * @param standing as it was last recorded
 */
public record FaultCase(OfJob job, UUID faultId, RepairedFault fault, List<RepairAttempt> repairs, Standing standing) {

    /**
     * The job of a fault.
     *
     * @param closedAt empty while it is open
     * @param scan with which it was opened, read when it was
     */
    public record OfJob(UUID id, Instant openedAt, Optional<Instant> closedAt, Optional<Scan> scan) {}

    public UUID jobId() {
        return job.id();
    }
}
