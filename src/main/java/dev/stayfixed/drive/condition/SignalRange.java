package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.Timeline;
import java.util.List;
import java.util.Optional;

/** One signal inside limits, both inclusive, in the signal's unit; an infinite limit is none. */
public record SignalRange(Signal signal, double min, double max) {

    private static final double ROUNDING = 1e-9;

    public SignalRange {
        boolean bounded = Double.isFinite(min) || Double.isFinite(max);
        if (!bounded || !(min <= max)) {
            throw new IllegalArgumentException(
                    "%s: found limits %s to %s, expected at least one limit, the lower one first"
                            .formatted(signal.words(), min, max));
        }
    }

    public static SignalRange atLeast(Signal signal, double min) {
        return new SignalRange(signal, min, Double.POSITIVE_INFINITY);
    }

    public static SignalRange atMost(Signal signal, double max) {
        return new SignalRange(signal, Double.NEGATIVE_INFINITY, max);
    }

    /** False for NaN; limits that were converted from another unit may be off by the last binary digit. */
    public boolean contains(double value) {
        return value >= min - ROUNDING && value <= max + ROUNDING;
    }

    /** The same limits with a value, as far as two of them allow one; empty where nothing is left. */
    public Optional<SignalRange> overlap(SignalRange other) {
        double low = Math.max(min, other.min);
        double high = Math.min(max, other.max);
        return low <= high ? Optional.of(new SignalRange(signal, low, high)) : Optional.empty();
    }

    /** "vehicle speed 70 to 110 km/h". */
    public String words() {
        return signal.words() + " " + limits();
    }

    String limits() {
        String unit = " " + signal.unit();
        if (min == Double.NEGATIVE_INFINITY) {
            return "at most " + Words.number(max) + unit;
        }
        return max == Double.POSITIVE_INFINITY
                ? "at least " + Words.number(min) + unit
                : Words.number(min) + " to " + Words.number(max) + unit;
    }

    boolean holds(Timeline held) {
        return contains(held.valueOrNaN(signal));
    }

    static boolean allHold(List<SignalRange> ranges, Timeline held) {
        for (int i = 0; i < ranges.size(); i++) {
            if (!ranges.get(i).holds(held)) {
                return false;
            }
        }
        return true;
    }

    boolean isKnown(Timeline held) {
        return !Double.isNaN(held.valueOrNaN(signal));
    }

    /** By how much the value lies outside; 0 inside. */
    double missedBy(double value) {
        return contains(value) ? 0 : Math.max(min - value, value - max);
    }

    /** "64 km/h, 6 km/h short". */
    String missedWords(double value) {
        return Words.beside(value, value < min ? min : max) + " " + signal.unit() + ", "
                + Words.beside(missedBy(value), 0) + " "
                + signal.differenceUnit()
                + (value < min ? " short" : " over");
    }
}
