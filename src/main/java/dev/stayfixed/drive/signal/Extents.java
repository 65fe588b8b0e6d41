package dev.stayfixed.drive.signal;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;

/** Follows the first, last, lowest and highest value of every signal, in one array each. */
final class Extents {

    private static final Signal[] SIGNALS = Signal.values();

    private final double[] first = new double[SIGNALS.length];
    private final double[] last = new double[SIGNALS.length];
    private final double[] lowest = new double[SIGNALS.length];
    private final double[] highest = new double[SIGNALS.length];
    private final long[] count = new long[SIGNALS.length];

    Extents() {
        Arrays.fill(lowest, Double.POSITIVE_INFINITY);
        Arrays.fill(highest, Double.NEGATIVE_INFINITY);
    }

    void add(Signal signal, double value) {
        int at = signal.index();
        if (count[at]++ == 0) {
            first[at] = value;
        }
        last[at] = value;
        lowest[at] = Math.min(lowest[at], value);
        highest[at] = Math.max(highest[at], value);
    }

    boolean has(Signal signal) {
        return count[signal.index()] > 0;
    }

    /** The first value; to be asked for only where there is one. */
    double first(Signal signal) {
        return first[signal.index()];
    }

    Map<Signal, Extent> all() {
        Map<Signal, Extent> all = new EnumMap<>(Signal.class);
        for (Signal signal : SIGNALS) {
            int at = signal.index();
            if (count[at] > 0) {
                all.put(signal, new Extent(first[at], last[at], lowest[at], highest[at], count[at]));
            }
        }
        return all;
    }
}
