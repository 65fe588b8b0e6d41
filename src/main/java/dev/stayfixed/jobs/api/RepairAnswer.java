package dev.stayfixed.jobs.api;

import dev.stayfixed.jobs.Measurement;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.platform.Given;
import dev.stayfixed.verification.bench.BenchCheck;
import dev.stayfixed.web.api.ScanLines;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A repair as it is recorded.
 *
 * @param changes what was put right in its record, in the order in which it was
 */
record RepairAnswer(
        UUID id,
        Instant performedAt,
        List<UUID> faultIds,
        String description,
        List<String> parts,
        @Nullable String technician,
        boolean codesCleared,
        @Nullable ScanLines scanBefore,
        @Nullable ScanLines scanAfter,
        List<Measured> measurements,
        List<Change> changes) {

    /** One field that was put right, as it stood and as it stands since. */
    record Change(
            Instant at, @Nullable String by, @Nullable String reason, Repair.Field field, String before, String after) {

        static Change of(Repair.Change change) {
            return new Change(
                    change.at(),
                    change.by().orElse(null),
                    change.reason().orElse(null),
                    change.field(),
                    change.before(),
                    change.after());
        }
    }

    /** A bench measurement; a reading is a number, or OPEN or OVER_LIMIT. */
    record Measured(
            BenchCheck check,
            String quantity,
            @Nullable String point,
            String unit,
            @Nullable Double expectedMin,
            @Nullable Double expectedMax,
            @Nullable Object before,
            @Nullable Object after,
            @Nullable Boolean testLeadsVerified) {

        static Measured of(Measurement m) {
            return new Measured(
                    m.check(),
                    m.quantity(),
                    m.point().orElse(null),
                    m.unit(),
                    Given.orNull(m.expectedMin()),
                    Given.orNull(m.expectedMax()),
                    m.before().map(Measured::reading).orElse(null),
                    m.after().map(Measured::reading).orElse(null),
                    m.testLeadsVerified().orElse(null));
        }

        private static Object reading(Measurement.Reading reading) {
            return reading instanceof Measurement.Value value ? (Object) value.number() : reading.text();
        }
    }

    static RepairAnswer of(Repair repair) {
        Repair.Details details = repair.details();
        return new RepairAnswer(
                repair.id(),
                details.performedAt(),
                repair.faultIds().stream().sorted().toList(),
                details.description(),
                details.parts(),
                details.technician().orElse(null),
                details.codesCleared(),
                details.scanBefore().map(Scan::read).map(ScanLines::of).orElse(null),
                details.scanAfter().map(Scan::read).map(ScanLines::of).orElse(null),
                details.measurements().stream().map(Measured::of).toList(),
                repair.changes().stream().map(Change::of).toList());
    }
}
