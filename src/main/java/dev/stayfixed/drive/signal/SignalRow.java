package dev.stayfixed.drive.signal;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * One row of a log: the values that were refreshed in it. A signal that is missing keeps its last value.
 *
 * @param millis on a clock of the log's own; only differences matter
 * @param values in the signals' canonical units
 */
public record SignalRow(long millis, Map<Signal, Double> values) {

    public SignalRow {
        Map<Signal, Double> copy = new EnumMap<>(Signal.class);
        copy.putAll(values);
        copy.forEach(SignalRow::check);
        values = Collections.unmodifiableMap(copy);
    }

    public OptionalDouble value(Signal signal) {
        Double value = values.get(signal);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private static void check(Signal signal, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(
                    signal.words() + ": found " + value + ", expected a number of " + signal.unit());
        }
    }
}
