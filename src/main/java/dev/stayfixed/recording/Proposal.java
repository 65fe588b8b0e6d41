package dev.stayfixed.recording;

import java.util.List;
import java.util.function.Function;

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
        return leastSure(ColumnProposal::confidence);
    }

    /** The same, whatever the values say: a broken sensor does not change what a header means. */
    public Confidence byHeaders() {
        return leastSure(ColumnProposal::byHeader);
    }

    private Confidence leastSure(Function<ColumnProposal, Confidence> confidence) {
        return columns.stream()
                .filter(column -> column.mapping().isPresent())
                .map(confidence)
                .reduce(time.confidence(), (a, b) -> a.compareTo(b) > 0 ? a : b);
    }
}
