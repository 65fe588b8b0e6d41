package dev.stayfixed.judging;

import dev.stayfixed.jobs.Standing;
import java.time.Instant;
import java.util.UUID;

/** Published in the transaction in which a fault comes to stand elsewhere: by a drive, a repair, or a correction of either. */
public record VerdictChanged(
        UUID vehicleId, UUID jobId, UUID faultId, String code, Standing before, Standing now, Instant at) {}
