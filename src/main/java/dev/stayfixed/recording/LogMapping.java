package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * How to read one kind of log: confirmed once by a person, then used for every log with these headers.
 *
 * @param columns at least one; each column and each signal at most once
 */
public record LogMapping(
        String timeColumn, TimeFormat timeFormat, DecimalMark decimalMark, List<ColumnMapping> columns) {

    public LogMapping {
        timeColumn = HeaderText.clean(timeColumn);
        columns = List.copyOf(columns);
        if (columns.isEmpty()) {
            throw new IllegalArgumentException("columns: found none, expected at least one with a signal");
        }
        Set<Signal> signals = EnumSet.noneOf(Signal.class);
        Set<String> headers = new HashSet<>();
        for (ColumnMapping column : columns) {
            if (!signals.add(column.signal()) || !headers.add(column.header())) {
                throw new IllegalArgumentException(
                        "column \"%s\": found %s a second time, expected each column and signal once"
                                .formatted(column.header(), column.signal().words()));
            }
        }
    }
}
