package dev.stayfixed.jobs;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * A picture that belongs to a repair.
 *
 * @param about the measurement that it shows, in the technician's words; nothing for the repair as a whole
 * @param width in pixels, as kept
 * @param height in pixels, as kept
 * @param digest SHA-256 of the file that is kept, in hexadecimal digits
 */
public record Photo(
        UUID id,
        UUID repairId,
        Optional<String> about,
        Optional<String> caption,
        Instant addedAt,
        int width,
        int height,
        String digest) {}
