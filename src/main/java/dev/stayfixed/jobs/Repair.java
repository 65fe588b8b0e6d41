package dev.stayfixed.jobs;

import dev.stayfixed.reason.Kind;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * One repair; for each of its faults it opens an attempt with a count of its own.
 *
 * @param faultIds the faults that it was meant to repair, at least one
 * @param changes what was put right in its record, in the order in which it was
 */
public record Repair(UUID id, Set<UUID> faultIds, Details details, List<Change> changes) {

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

    /** What can be put right, and how it is written down. */
    public enum Field implements Kind {
        PERFORMED_AT,
        DESCRIPTION,
        PARTS,
        TECHNICIAN,
        CODES_CLEARED,
        SCAN_BEFORE,
        SCAN_AFTER,
        MEASUREMENTS;

        private String text(Details details) {
            return switch (this) {
                case PERFORMED_AT -> details.performedAt().toString();
                case DESCRIPTION -> details.description();
                case PARTS -> String.join("\n", details.parts());
                case TECHNICIAN -> details.technician().orElse("");
                case CODES_CLEARED -> details.codesCleared() ? "yes" : "no";
                case SCAN_BEFORE -> details.scanBefore().orElse("");
                case SCAN_AFTER -> details.scanAfter().orElse("");
                case MEASUREMENTS ->
                    details.measurements().stream().map(Repair::words).collect(Collectors.joining("\n"));
            };
        }
    }

    /**
     * Who put a record right, and why.
     *
     * @param by the name of a person, where one was given
     */
    public record Correction(Optional<String> by, Optional<String> reason) {}

    /**
     * One field that was put right.
     *
     * @param before as it stood: a time in ISO 8601, yes or no, text, or one line for each part or measurement; "" for nothing
     * @param after as it stands since, written likewise
     */
    public record Change(
            Instant at, Optional<String> by, Optional<String> reason, Field field, String before, String after) {}

    /** A measurement in one line, such as "heater resistance, pins 3-4: before OPEN, after 6.1 Ω, expected 5.0 to 7.0". */
    private static String words(Measurement m) {
        StringBuilder words = new StringBuilder(m.quantity());
        m.point().ifPresent(point -> words.append(", ").append(point));
        words.append(": before ")
                .append(m.before().map(Measurement.Reading::text).orElse("not read"));
        words.append(", after ").append(m.after().map(Measurement.Reading::text).orElse("not read"));
        words.append(' ').append(m.unit());
        if (m.expectedMin().isPresent() || m.expectedMax().isPresent()) {
            words.append(", expected ")
                    .append(limit(m.expectedMin()))
                    .append(" to ")
                    .append(limit(m.expectedMax()));
        }
        m.testLeadsVerified().ifPresent(yes -> words.append(", test leads ").append(yes ? "verified" : "not verified"));
        return words.toString();
    }

    private static String limit(OptionalDouble limit) {
        return limit.isPresent() ? Double.toString(limit.getAsDouble()) : "any";
    }

    /** Every field in which two records of one repair differ. */
    static List<Change> between(Details before, Details after, Correction correction, Instant at) {
        List<Change> changes = new ArrayList<>();
        for (Field field : Field.values()) {
            String was = field.text(before);
            String is = field.text(after);
            if (!was.equals(is)) {
                changes.add(new Change(at, correction.by(), correction.reason(), field, was, is));
            }
        }
        return changes;
    }
}
