package dev.stayfixed.verification.bench;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
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
        return reading instanceof BenchReading.Figure number
                && number.value() >= expectedMin.orElse(Double.NEGATIVE_INFINITY)
                && number.value() <= expectedMax.orElse(Double.POSITIVE_INFINITY);
    }

    /** The reading that speaks of the state in which the car left. */
    Optional<BenchReading> last() {
        return after.or(() -> before);
    }

    /** "6.1 Ω, expected 5 to 7 Ω"; the unit is the technician's own word. Call {@link #hasBand} first. */
    Reason against(BenchReading reading) {
        Part found = found(reading);
        if (expectedMin.isEmpty()) {
            return Reason.of(BenchReason.EXPECTED_MOST, found, plain(expectedMax.orElseThrow()), words(unit));
        }
        Part min = plain(expectedMin.getAsDouble());
        return expectedMax.isEmpty()
                ? Reason.of(BenchReason.EXPECTED_LEAST, found, min, words(unit))
                : Reason.of(BenchReason.EXPECTED_BETWEEN, found, min, plain(expectedMax.getAsDouble()), words(unit));
    }

    private Part found(BenchReading reading) {
        if (reading instanceof BenchReading.Figure number) {
            return Reason.of(BenchReason.NUMBER_READ, plain(number.value()), words(unit));
        }
        return (BenchReading.NoNumber) reading;
    }

    private static Part plain(double number) {
        return Quantity.exactly(number, Unit.ONE);
    }

    private static Part words(String own) {
        return Part.verbatim(own);
    }
}
