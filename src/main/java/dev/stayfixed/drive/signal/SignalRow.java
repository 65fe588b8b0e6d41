package dev.stayfixed.drive.signal;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * One row of a log: the values that were refreshed in it, in the signals' canonical units. A signal that is missing keeps its last
 * value. A long log has millions of values: they lie in an array, not in a map.
 */
public final class SignalRow {

    private static final Signal[] SIGNALS = Signal.values();

    private final long millis;
    private final double[] values;
    private final long present;

    /** Something that is done with each value of a row. */
    @FunctionalInterface
    public interface EachValue {
        void take(Signal signal, double value);
    }

    /**
     * A row with these values.
     *
     * @param millis on a clock of the log's own; only differences matter
     * @throws IllegalArgumentException where a value is no finite number
     */
    public SignalRow(long millis, Map<Signal, Double> values) {
        this(millis, spread(values));
    }

    private SignalRow(long millis, double[] values) {
        this.millis = millis;
        this.values = values;
        this.present = present(values);
    }

    /**
     * A row with these values.
     *
     * @param values one for each signal, by its ordinal; NaN where it is missing. They belong to the row from now on.
     * @throws IllegalArgumentException where there are not as many as signals, or one is infinite
     */
    public static SignalRow ofValues(long millis, double[] values) {
        if (values.length != SIGNALS.length) {
            throw new IllegalArgumentException(
                    "values: found " + values.length + ", expected one for each of " + SIGNALS.length + " signals");
        }
        return new SignalRow(millis, values);
    }

    private static double[] spread(Map<Signal, Double> values) {
        double[] spread = new double[SIGNALS.length];
        Arrays.fill(spread, Double.NaN);
        values.forEach((signal, value) -> {
            check(signal, value);
            spread[signal.index()] = value;
        });
        return spread;
    }

    private static void check(Signal signal, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(
                    signal.words() + ": found " + value + ", expected a number of " + signal.unit());
        }
    }

    /** One bit for each signal that is there. */
    private static long present(double[] values) {
        long present = 0;
        for (int i = 0; i < values.length; i++) {
            if (!Double.isNaN(values[i])) {
                check(SIGNALS[i], values[i]);
                present |= 1L << i;
            }
        }
        return present;
    }

    public long millis() {
        return millis;
    }

    public OptionalDouble value(Signal signal) {
        double value = valueOrNaN(signal);
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** The same as a number; NaN where it is missing. */
    public double valueOrNaN(Signal signal) {
        return values[signal.index()];
    }

    /** In the order of the signals. */
    public void forEach(EachValue each) {
        for (long left = present; left != 0; left &= left - 1) {
            int at = Long.numberOfTrailingZeros(left);
            each.take(SIGNALS[at], values[at]);
        }
    }

    /** The values that are there, as a map of their own. */
    public Map<Signal, Double> values() {
        Map<Signal, Double> map = new EnumMap<>(Signal.class);
        forEach(map::put);
        return Collections.unmodifiableMap(map);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SignalRow row && millis == row.millis && Arrays.equals(values, row.values);
    }

    @Override
    public int hashCode() {
        return 31 * Long.hashCode(millis) + Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        return "SignalRow[millis=" + millis + ", values=" + values() + "]";
    }
}
