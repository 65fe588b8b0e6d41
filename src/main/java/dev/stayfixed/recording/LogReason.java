package dev.stayfixed.recording;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** Why a log cannot be the record of a drive, what in it is in doubt, and what speaks against a confirmed mapping. */
public enum LogReason implements Kind {
    VALUES_OUTSIDE("signal", "count", "lowest", "highest", "unit", "first", "line"),
    CELLS_UNREADABLE("signal", "count", "all", "unit"),
    MORE_DROPPED("dropped", "read"),
    TIME_GOES_BACK("seconds"),
    TIME_LEAPS("hours"),
    LONGER_THAN_A_DRIVE("hours"),
    ONE_TIME,
    UNIT_IN_DOUBT("column", "highest", "fitting", "unit"),
    OTHER_MARK("mark", "confirmed"),
    OTHER_TIME("column", "cell", "confirmed"),
    OTHER_STEPS("column", "format", "confirmed"),
    OTHER_UNIT("column", "unit", "confirmed"),
    OTHER_VALUES("column", "cell", "confirmed"),
    OTHER_HEIGHT("column", "highest", "unit", "confirmed"),
    REFUSED_AT_LINE("line", "found", "expected"),
    REFUSED_FILE("found", "expected");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    LogReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
