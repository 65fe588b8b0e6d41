package dev.stayfixed.jobs;

import java.time.Instant;
import java.util.UUID;

/** Published in the transaction in which a job begins, ends or begins again. */
public record JobMoved(UUID vehicleId, UUID jobId, Step step, Instant at) {

    /** What happened to it. */
    public enum Step {
        OPENED,
        FAULT_ADDED,
        CLOSED,
        REOPENED
    }
}
