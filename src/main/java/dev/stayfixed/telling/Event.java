package dev.stayfixed.telling;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * Something that happened.
 *
 * @param summary one sentence for the shop
 * @param content JSON, for webhooks: who, what, where it stood and stands
 */
public record Event(
        UUID id,
        EventKind kind,
        Instant occurredAt,
        Optional<UUID> jobId,
        Optional<UUID> faultId,
        String summary,
        String content,
        Optional<Instant> readAt) {}
