package dev.stayfixed.worklist;

import java.time.Instant;
import java.util.UUID;

/** When anything last came in of an open job that has a repair: the repair, or a drive of its vehicle. */
public record LastHeard(UUID jobId, UUID vehicleId, Instant at) {}
