package dev.stayfixed.jobs;

import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.RepairedFault;
import java.util.List;
import java.util.UUID;

/**
 * A fault as it is judged.
 *
 * @param standing as it was last recorded
 */
public record FaultCase(
        UUID jobId, UUID faultId, RepairedFault fault, List<RepairAttempt> repairs, Standing standing) {}
