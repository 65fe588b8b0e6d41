package dev.stayfixed.jobs;

import dev.stayfixed.verification.bench.BenchCheck;
import jakarta.persistence.Embeddable;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The row of a measurement. */
@Embeddable
record StoredMeasurement(
        @Nullable String benchCheck,
        String quantity,
        @Nullable String point,
        String unit,
        @Nullable Double expectedMin,
        @Nullable Double expectedMax,
        @Nullable String readingBefore,
        @Nullable String readingAfter,
        @Nullable Boolean testLeadsVerified) {

    static StoredMeasurement of(Measurement m) {
        return new StoredMeasurement(
                m.check().name(),
                m.quantity(),
                m.point().orElse(null),
                m.unit(),
                StoredCondition.orNull(m.expectedMin()),
                StoredCondition.orNull(m.expectedMax()),
                m.before().map(Measurement.Reading::text).orElse(null),
                m.after().map(Measurement.Reading::text).orElse(null),
                m.testLeadsVerified().orElse(null));
    }

    Measurement facts() {
        return new Measurement(
                benchCheck == null ? BenchCheck.OTHER : BenchCheck.valueOf(benchCheck),
                quantity,
                Optional.ofNullable(point),
                unit,
                StoredCondition.optional(expectedMin),
                StoredCondition.optional(expectedMax),
                Optional.ofNullable(readingBefore).map(Measurement.Reading::of),
                Optional.ofNullable(readingAfter).map(Measurement.Reading::of),
                Optional.ofNullable(testLeadsVerified));
    }
}
