package dev.stayfixed.archive;

import dev.stayfixed.drive.condition.Interval;
import dev.stayfixed.drive.signal.Signal;
import java.time.Instant;
import java.util.List;
import java.util.Map;

/**
 * The signals of a drive, thinned out for a picture: of each stretch of time the lowest and the highest value, so that no peak is
 * lost.
 *
 * @param from when the first row was written
 * @param length ms from the first row to the last
 * @param gaps in which nothing was recorded
 */
public record SignalSeries(Instant from, long length, Map<Signal, List<Point>> signals, List<Interval> gaps) {

    /**
     * A value.
     *
     * @param at ms since the first row
     */
    public record Point(long at, double value) {}
}
