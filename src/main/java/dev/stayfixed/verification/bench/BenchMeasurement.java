package dev.stayfixed.verification.bench;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One point, measured before the repair, after it, or both.
 *
 * @param quantity what was measured, in the technician's words
 * @param expectedMin from service information, in {@code unit}, inclusive; likewise the maximum
 * @param leadsVerified the leads were held together first and read close to nothing; empty where nobody said
 */
public record BenchMeasurement(
        BenchCheck check,
        String quantity,
        String unit,
        OptionalDouble expectedMin,
        OptionalDouble expectedMax,
        Optional<BenchReading> before,
        Optional<BenchReading> after,
        Optional<Boolean> leadsVerified) {

    boolean is(BenchCheck wanted) {
        return check == wanted;
    }

    boolean hasBand() {
        return expectedMin.isPresent() || expectedMax.isPresent();
    }

    /** Whether the reading lies inside the band; call {@link #hasBand} first. */
    boolean isInside(BenchReading reading) {
        if (reading.number().isEmpty()) {
            return false;
        }
        double number = reading.number().getAsDouble();
        return number >= expectedMin.orElse(Double.NEGATIVE_INFINITY)
                && number <= expectedMax.orElse(Double.POSITIVE_INFINITY);
    }

    /** The reading that speaks of the state in which the car left. */
    Optional<BenchReading> last() {
        return after.or(() -> before);
    }

    /** "6.1 Ω, expected 5 to 7 Ω". */
    String describe(BenchReading reading) {
        String unitBehind = reading.number().isPresent() ? " " + unit : "";
        return reading.words() + unitBehind + ", expected " + band();
    }

    private String band() {
        if (expectedMin.isPresent() && expectedMax.isPresent()) {
            return number(expectedMin.getAsDouble()) + " to " + number(expectedMax.getAsDouble()) + " " + unit;
        }
        return expectedMin.isPresent()
                ? "at least " + number(expectedMin.getAsDouble()) + " " + unit
                : "at most " + number(expectedMax.orElseThrow()) + " " + unit;
    }

    private static String number(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e15
                ? Long.toString((long) value)
                : Double.toString(value);
    }
}
