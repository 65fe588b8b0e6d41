package dev.stayfixed.recording;

import dev.stayfixed.reason.Reason;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What was understood of a log, what was not, and why.
 *
 * @param rows handed on
 * @param start of the first row, where the log's time names a moment in the world
 * @param firstTime as it stands in the file
 * @param unused headers of the columns that the mapping does not name
 * @param missing headers that the mapping names and the file lacks
 * @param implausible why this cannot be the record of a drive; empty for a usable log
 * @param doubts why the unit of a column is in doubt, once all values are known; it was read as the mapping says all the same
 */
public record LogReport(
        long rows,
        Optional<Instant> start,
        String firstTime,
        String lastTime,
        List<ColumnUse> columns,
        List<String> unused,
        List<String> missing,
        List<Note> notes,
        List<Reason> implausible,
        List<Reason> doubts) {

    public LogReport {
        columns = List.copyOf(columns);
        unused = List.copyOf(unused);
        missing = List.copyOf(missing);
        notes = List.copyOf(notes);
        implausible = List.copyOf(implausible);
        doubts = List.copyOf(doubts);
    }

    /** Whether a drive may be judged from it; an implausible log is shown, never scored. */
    public boolean isScorable() {
        return implausible.isEmpty();
    }
}
