package dev.stayfixed.recording;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What a log should hold there, and what to do. */
enum LogExpected implements Kind {
    CELLS("columns", "characters"),
    HEADER,
    HEADER_LINE,
    TIME_COLUMN("formats"),
    SIGNAL_COLUMN,
    MAPPED_COLUMNS("column"),
    UNITS_AT_TOP,
    COLUMNS_AT_TOP,
    CLOSED_QUOTE,
    WHOLE_GZIP,
    ONE_FILE,
    WHOLE_ZIP,
    CSV_WITH_HEADER,
    CSV_SAVED_AGAIN,
    CSV,
    WHOLE_FILE,
    FEWER_BYTES("bytes"),
    UNPACKED,
    ONE_LOG;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    LogExpected(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
