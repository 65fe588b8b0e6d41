package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.Timeline;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
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
    public Reason said() {
        return Reason.of(ConditionReason.RANGE, signal, limits());
    }

    public Reason limits() {
        if (min == Double.NEGATIVE_INFINITY) {
            return Reason.of(ConditionReason.NO_MORE, amount(max));
        }
        return max == Double.POSITIVE_INFINITY
                ? Reason.of(ConditionReason.NO_LESS, amount(min))
                : Reason.of(ConditionReason.BETWEEN, amount(min), amount(max));
    }

    private Quantity amount(double value) {
        return Quantity.of(value, signal.measure());
    }

    /** With the ranges that have to hold all the while, where there are some. */
    static Reason during(Reason what, List<SignalRange> ranges) {
        return ranges.isEmpty()
                ? what
                : Reason.of(
                        ConditionReason.WITH,
                        what,
                        Shape.BOTH.of(ranges.stream().map(SignalRange::said).toList()));
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

    boolean isShort(double value) {
        return value < min;
    }

    /** A value beside the limit that it misses. */
    Quantity found(double value) {
        return amount(value).beside(isShort(value) ? min : max);
    }

    Quantity missed(double value) {
        return Quantity.of(missedBy(value), signal.measure().ofDifference()).beside(0);
    }
}
