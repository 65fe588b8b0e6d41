package dev.stayfixed.recording;

import dev.stayfixed.reason.Reason;
import java.util.Optional;

/**
 * What the reader makes of one column.
 *
 * @param header as it stands in the file, cleaned
 * @param mapping empty where the column is not used, and for the time column
 * @param byHeader how sure the header alone makes it; values may speak against it, or be missing at the beginning of the log
 * @param reason what speaks for it or why it is not used
 */
public record ColumnProposal(
        String header, Optional<ColumnMapping> mapping, Confidence confidence, Confidence byHeader, Reason reason) {

    ColumnProposal(String header, Optional<ColumnMapping> mapping, Confidence confidence, Reason reason) {
        this(header, mapping, confidence, confidence, reason);
    }

    static ColumnProposal unused(String header, Reason reason) {
        return new ColumnProposal(header, Optional.empty(), Confidence.NONE, reason);
    }
}
