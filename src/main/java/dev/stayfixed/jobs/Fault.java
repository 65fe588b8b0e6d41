package dev.stayfixed.jobs;

import dev.stayfixed.verification.RepairedFault;
import java.util.UUID;

/**
 * A fault of a job.
 *
 * @param terms what has to be proven, and how
 * @param standing where it stands at present
 */
public record Fault(UUID id, RepairedFault terms, Standing standing) {}
