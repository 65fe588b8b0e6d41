package dev.stayfixed.intake;

import dev.stayfixed.archive.LogMappingForm;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * A mapping that a person confirmed.
 *
 * @param headers of the logs that it is for, all of them, in any order
 */
public record SavedMapping(UUID id, String name, List<String> headers, LogMappingForm mapping, Instant createdAt) {}
