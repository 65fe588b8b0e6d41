package dev.stayfixed.learning;

import java.time.Instant;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * A repair that did not last, within the shop's window.
 *
 * @param jobId the job in which it shows
 * @param earlierJobId the job of the repair; the same one where a drive brought it back
 * @param sameCode the same code, else another one of the same monitor
 * @param daysSince from the repair
 * @param kmSince known to have been driven since; empty where nothing is known
 */
public record Comeback(
        UUID jobId,
        UUID faultId,
        UUID earlierJobId,
        UUID earlierFaultId,
        SeenBy seenBy,
        boolean sameCode,
        Instant happenedAt,
        double daysSince,
        OptionalDouble kmSince) {

    /** What brought it to light. */
    public enum SeenBy {
        DRIVE,
        NEW_JOB
    }
}
