package dev.stayfixed.recording;

import java.util.List;

/**
 * How the reader would read a log, to be confirmed by a person.
 *
 * @param time what was made of the time column
 * @param columns all other columns, in the order of the file
 */
public record Proposal(LogMapping mapping, ColumnProposal time, List<ColumnProposal> columns) {

    public Proposal {
        columns = List.copyOf(columns);
    }

    /** The least sure of all that is used. */
    public Confidence confidence() {
        return columns.stream()
                .filter(column -> column.mapping().isPresent())
                .map(ColumnProposal::confidence)
                .reduce(time.confidence(), (a, b) -> a.compareTo(b) > 0 ? a : b);
    }
}
