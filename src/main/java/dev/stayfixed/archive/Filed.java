package dev.stayfixed.archive;

import java.time.Instant;
import java.util.UUID;

/**
 * Where a drive stands on file.
 *
 * @param revision of the submission by which it is judged: 1 for the first, one more with each correction
 * @param start when it began, by that submission
 * @param receivedAt when the first submission came in
 */
public record Filed(UUID id, int revision, UUID vehicleId, Instant start, Instant receivedAt) {}
