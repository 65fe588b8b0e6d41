package dev.stayfixed.recording;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What was found in a log that is refused, unless it is shown as it is. */
enum LogFound implements Kind {
    UNCUT_ROW,
    NO_HEADER,
    ONLY_BLANK_LINES,
    NO_TIME_COLUMN("columns"),
    NO_SIGNAL_COLUMN("columns"),
    COLUMNS("columns"),
    UNITS_IN_THE_MIDDLE("units"),
    HEADER_IN_THE_MIDDLE("columns"),
    CELL_OVER_LINES,
    NO_READABLE_TIME("column"),
    DAMAGED_GZIP,
    ZIP_WITHOUT_LOG,
    ZIP_WITHOUT_LOG_BUT("name"),
    DAMAGED_ZIP("why"),
    EMPTY_FILE,
    UTF_16,
    BINARY,
    DAMAGED_DATA("why"),
    DATA_END_EARLY,
    LARGE_WHEN_UNPACKED("bytes"),
    PACKED_TOO_WELL("ratio"),
    SECOND_LOG("name");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    LogFound(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
