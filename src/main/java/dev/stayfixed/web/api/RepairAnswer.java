package dev.stayfixed.web.api;

import dev.stayfixed.jobs.Measurement;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.verification.bench.BenchCheck;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A repair as it was recorded. */
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
        List<Measured> measurements) {

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
                    Words.orNull(m.expectedMin()),
                    Words.orNull(m.expectedMax()),
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
                details.measurements().stream().map(Measured::of).toList());
    }
}
