package dev.stayfixed.intake;

import com.fasterxml.jackson.annotation.JsonIgnore;
import dev.stayfixed.archive.LogMappingForm;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.recording.ColumnMapping;
import dev.stayfixed.recording.ColumnProposal;
import dev.stayfixed.recording.Confidence;
import dev.stayfixed.recording.LogHead;
import dev.stayfixed.recording.Proposal;
import dev.stayfixed.recording.SourceUnit;
import dev.stayfixed.wording.Wording;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * How a log would be read, with the reasons, to be confirmed by a person.
 *
 * @param headers all of the file, in its order; they are what a saved mapping is found by
 * @param confidence the least sure of all that is used
 * @param mapping to be sent to POST /api/v1/log-mappings, as it is or corrected
 */
public record LogProposal(List<String> headers, Confidence confidence, List<Column> columns, LogMappingForm mapping) {

    /**
     * What is made of one column; without a signal it is the time column, or not used.
     *
     * @param reason as the interface answers it
     * @param why the same, for pages
     */
    public record Column(
            String header,
            boolean time,
            @Nullable Signal signal,
            @Nullable SourceUnit unit,
            Confidence confidence,
            String reason,
            @JsonIgnore Reason why,
            List<String> samples) {}

    static LogProposal of(LogHead head, Proposal proposal) {
        return new LogProposal(
                head.headers(),
                proposal.confidence(),
                Stream.concat(
                                Stream.of(column(head, proposal.time(), true)),
                                proposal.columns().stream().map(c -> column(head, c, false)))
                        .toList(),
                LogMappingForm.of(proposal.mapping()).with(String.valueOf(head.separator()), null));
    }

    private static Column column(LogHead head, ColumnProposal column, boolean time) {
        List<String> samples = head.columns().stream()
                .filter(c -> c.header().equals(column.header()))
                .findFirst()
                .map(LogHead.Column::samples)
                .orElse(List.of());
        return new Column(
                column.header(),
                time,
                column.mapping().map(ColumnMapping::signal).orElse(null),
                column.mapping().map(ColumnMapping::unit).orElse(null),
                column.confidence(),
                Wording.METRIC.words(column.reason()),
                column.reason(),
                samples);
    }
}
