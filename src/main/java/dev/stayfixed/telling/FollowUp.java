package dev.stayfixed.telling;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * A promise to look at a job again.
 *
 * @param version grows by one with every change
 * @param note what was promised
 */
public record FollowUp(
        UUID id, UUID jobId, int version, Instant dueAt, String note, Instant madeAt, Optional<Instant> doneAt) {}
