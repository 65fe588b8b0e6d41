package dev.stayfixed.drive.signal;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Walks through the rows of one drive and says, for the time between two rows, how long it was and what held in it. A row's values
 * hold until the next row; a signal that a row leaves out keeps its last value. Time between rows longer than {@link #LONGEST_STEP}
 * was not recorded: it holds nothing. A row that is not later than the one before adds no time.
 */
public final class Timeline {

    /** ms; exactly this long still counts. */
    public static final long LONGEST_STEP = 5_000;

    private final double[] held = new double[Signal.values().length];
    private long start;
    private long now;
    private boolean started;

    /** Nothing is known yet. */
    public Timeline() {
        Arrays.fill(held, Double.NaN);
    }

    /**
     * The time between two rows, in ms since the first row.
     *
     * @param first there was no row before: nothing lies between
     * @param backward how far the row's clock stood behind the row before; 0 where it repeats it or goes on
     */
    public record Step(long from, long to, boolean first, long backward) {

        public long length() {
            return to - from;
        }

        public boolean isGap() {
            return length() > LONGEST_STEP;
        }

        /** The row's time was not later than that of the row before. */
        public boolean isNonIncreasing() {
            return !first && length() == 0;
        }
    }

    /** Moves to the time of the next row. What {@link #held} answers is still what held until then; {@link #hold} is to follow. */
    public Step moveTo(long millis) {
        if (!started) {
            started = true;
            start = millis;
            now = millis;
            return new Step(0, 0, true, 0);
        }
        long before = now;
        now = Math.max(now, millis);
        return new Step(before - start, now - start, false, Math.max(0, before - millis));
    }

    /** Takes over the values of the row that {@link #moveTo} reached. */
    public void hold(SignalRow row) {
        row.forEach((signal, value) -> held[signal.index()] = value);
    }

    /** The last value that a row gave. */
    public OptionalDouble held(Signal signal) {
        double value = valueOrNaN(signal);
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** The same as a number; NaN where it is unknown, so that every comparison with it is false. */
    public double valueOrNaN(Signal signal) {
        return held[signal.index()];
    }
}
