package dev.stayfixed.jobs;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * One repair; for each of its faults it opens an attempt with a count of its own.
 *
 * @param faultIds the faults that it was meant to repair, at least one
 */
public record Repair(UUID id, Set<UUID> faultIds, Details details) {

    /**
     * What was done.
     *
     * @param codesCleared service $04 or $14 was sent with the repair
     * @param scanBefore pasted text, read before the repair and before any clear
     * @param scanAfter pasted text, read after the repair and after the clear
     */
    public record Details(
            Instant performedAt,
            String description,
            List<String> parts,
            Optional<String> technician,
            boolean codesCleared,
            Optional<String> scanBefore,
            Optional<String> scanAfter,
            List<Measurement> measurements) {

        public Details {
            parts = List.copyOf(parts);
            measurements = List.copyOf(measurements);
        }
    }
}
