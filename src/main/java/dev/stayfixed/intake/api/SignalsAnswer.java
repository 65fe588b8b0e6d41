package dev.stayfixed.intake.api;

import dev.stayfixed.archive.SignalSeries;
import dev.stayfixed.drive.condition.Interval;
import dev.stayfixed.drive.signal.Signal;
import java.time.Instant;
import java.util.List;

/**
 * Signals for a picture; all times in ms since the first row.
 *
 * @param from when the first row was written
 */
record SignalsAnswer(Instant from, long length, List<Series> signals, List<Interval> gaps) {

    /** One signal in the order of time. */
    record Series(Signal signal, String words, String unit, List<SignalSeries.Point> points) {}

    static SignalsAnswer of(SignalSeries series) {
        return new SignalsAnswer(
                series.from(),
                series.length(),
                series.signals().entrySet().stream()
                        .map(e -> new Series(
                                e.getKey(), e.getKey().words(), e.getKey().unit(), e.getValue()))
                        .toList(),
                series.gaps());
    }
}
