package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;

/**
 * Which signal a column carries, and in which unit.
 *
 * @param header as it stands in the file; space around it and doubled encodings do not matter
 */
public record ColumnMapping(String header, Signal signal, SourceUnit unit) {

    public ColumnMapping {
        header = HeaderText.clean(header);
        if (!unit.fits(signal)) {
            throw new IllegalArgumentException("column \"%s\": found unit %s for %s, expected a unit like %s"
                    .formatted(header, unit.spelling(), signal.words(), signal.unit()));
        }
    }
}
