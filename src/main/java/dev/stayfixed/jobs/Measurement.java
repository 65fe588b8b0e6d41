package dev.stayfixed.jobs;

import dev.stayfixed.verification.bench.BenchCheck;
import dev.stayfixed.verification.bench.BenchMeasurement;
import dev.stayfixed.verification.bench.BenchReading;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A bench measurement: the same point before and after the repair.
 *
 * @param check what it checks; of a part, the old one is read before and the new one after
 * @param point where the leads were held
 * @param expectedMin from service information, in {@code unit}, inclusive; likewise the maximum
 * @param testLeadsVerified the leads were held together first and read close to nothing; empty where nobody said
 */
public record Measurement(
        BenchCheck check,
        String quantity,
        Optional<String> point,
        String unit,
        OptionalDouble expectedMin,
        OptionalDouble expectedMax,
        Optional<Reading> before,
        Optional<Reading> after,
        Optional<Boolean> testLeadsVerified) {

    public Measurement {
        if (expectedMin.isPresent()
                && expectedMax.isPresent()
                && expectedMin.getAsDouble() > expectedMax.getAsDouble()) {
            throw new IllegalArgumentException("expected values: found %s to %s, expected the lower one first"
                    .formatted(expectedMin.getAsDouble(), expectedMax.getAsDouble()));
        }
    }

    /** The same, as the bench proof takes it. */
    public BenchMeasurement atTheBench() {
        return new BenchMeasurement(
                check,
                quantity,
                unit,
                expectedMin,
                expectedMax,
                before.map(Measurement::read),
                after.map(Measurement::read),
                testLeadsVerified);
    }

    private static BenchReading read(Reading reading) {
        if (reading instanceof Value value) {
            return new BenchReading.Figure(value.number());
        }
        return reading == NoValue.OPEN ? BenchReading.NoNumber.OPEN : BenchReading.NoNumber.OVER_LIMIT;
    }

    /** What the meter showed. */
    public sealed interface Reading {

        /** As it is kept: a number, or a word. */
        String text();

        static Reading of(String text) {
            for (NoValue word : NoValue.values()) {
                if (word.text().equals(text)) {
                    return word;
                }
            }
            try {
                return new Value(Double.parseDouble(text));
            } catch (NumberFormatException e) {
                throw new IllegalArgumentException(
                        "reading: found " + text + ", expected a number, OPEN or OVER_LIMIT", e);
            }
        }
    }

    /** A number, in the unit of the measurement. */
    public record Value(double number) implements Reading {
        public Value {
            if (!Double.isFinite(number)) {
                throw new IllegalArgumentException("reading: found " + number + ", expected a finite number");
            }
        }

        @Override
        public String text() {
            return Double.toString(number);
        }
    }

    /** The meter showed no number. */
    public enum NoValue implements Reading {
        /** No connection. */
        OPEN,
        /** More than the meter's range. */
        OVER_LIMIT;

        @Override
        public String text() {
            return name();
        }
    }
}
