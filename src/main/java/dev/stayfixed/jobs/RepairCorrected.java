package dev.stayfixed.jobs;

import java.util.UUID;

/** The record of a repair was put right; whoever judges must judge again, in the same transaction, and revise what was told. */
public record RepairCorrected(UUID vehicleId) {}
