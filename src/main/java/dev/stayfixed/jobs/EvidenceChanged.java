package dev.stayfixed.jobs;

import java.util.UUID;

/** Something on which verdicts of this vehicle rest has changed; whoever judges must judge again, in the same transaction. */
public record EvidenceChanged(UUID vehicleId) {}
