package dev.stayfixed.archive;

import dev.stayfixed.drive.signal.SignalFacts;
import dev.stayfixed.recording.LogReport;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * What a log tells of its drive. It is kept beside the drive and can be computed again from the log.
 *
 * @param firstRow when the first row was written
 * @param report what was understood, dropped, and why
 */
public record LogFacts(Instant firstRow, LogReport report, SignalFacts signals) {

    /** To be raised whenever the same log would give other facts or other results of conditions. */
    static final int VERSION = 3;

    /** The engine start, or the first row where it never ran. */
    Instant start() {
        return firstRow.plusMillis(signals.engineStart().orElse(0));
    }

    /** The last row; empty for a log whose clock cannot be trusted. */
    Optional<Instant> end() {
        return report.isScorable()
                ? Optional.of(firstRow.plus(Duration.ofMillis(signals.rows().wall())))
                : Optional.empty();
    }
}
