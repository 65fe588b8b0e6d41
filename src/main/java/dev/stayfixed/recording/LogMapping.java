package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * How to read one kind of log: confirmed once by a person, then used for every log with these headers.
 *
 * @param dateColumn where the date stands beside the time of day in a column of its own; both together are in the time format
 * @param columns at least one; each column and each signal at most once
 */
public record LogMapping(
        String timeColumn,
        Optional<String> dateColumn,
        TimeFormat timeFormat,
        DecimalMark decimalMark,
        List<ColumnMapping> columns) {

    public LogMapping(String timeColumn, TimeFormat timeFormat, DecimalMark decimalMark, List<ColumnMapping> columns) {
        this(timeColumn, Optional.empty(), timeFormat, decimalMark, columns);
    }

    public LogMapping {
        timeColumn = HeaderText.clean(timeColumn);
        dateColumn = dateColumn.map(HeaderText::clean);
        if (dateColumn.isPresent() && !timeFormat.hasDate()) {
            throw new IllegalArgumentException(
                    "time format: found \"%s\" with a column for the date, expected one with a date"
                            .formatted(timeFormat));
        }
        columns = List.copyOf(columns);
        if (columns.isEmpty()) {
            throw new IllegalArgumentException("columns: found none, expected at least one with a signal");
        }
        String time = timeColumn;
        if (dateColumn.filter(time::equals).isPresent()) {
            throw new IllegalArgumentException(
                    "date column: found \"%s\", the column of the time, expected another one".formatted(time));
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

    /**
     * The columns whose unit neither their header nor a published name tells, where a wrong one would go unnoticed: speeds, temperatures,
     * distances. It was confirmed for one car's log and may be another in the next car's.
     */
    public List<ColumnMapping> takenOnTrust() {
        return columns.stream()
                .filter(column -> UsualValues.isTakenOnTrust(column.signal()))
                .filter(column -> HeaderText.of(column.header()).unit().isEmpty())
                .filter(column -> VssNames.named(column.header()).isEmpty()
                        && PidNames.named(column.header()).isEmpty())
                .toList();
    }
}
