package dev.stayfixed.recording;

import java.util.Optional;

/**
 * What the reader makes of one column.
 *
 * @param header as it stands in the file, cleaned
 * @param mapping empty where the column is not used, and for the time column
 * @param reason in words, what speaks for it or why it is not used
 */
public record ColumnProposal(String header, Optional<ColumnMapping> mapping, Confidence confidence, String reason) {

    static ColumnProposal unused(String header, String reason) {
        return new ColumnProposal(header, Optional.empty(), Confidence.NONE, reason);
    }
}
