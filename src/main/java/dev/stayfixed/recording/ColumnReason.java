package dev.stayfixed.recording;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** Why a column is taken for what it is taken for, and what speaks against it. */
enum ColumnReason implements Kind {
    NO_SIGNAL,
    PUBLISHED_NAME("source", "unit"),
    BESIDE_NAME("beside"),
    KILOMETRES_BY_NAMES,
    KILOMETRES_BY_VALUES,
    METRES_BY_HEIGHT,
    METRES_BY_STEPS,
    KILOMETRES_OR_METRES,
    ANOTHER_QUANTITY("signal", "other"),
    NO_VALUE_OF_IT("signal", "cell"),
    DOES_NOT_ONLY_GROW("signal"),
    HEADER_SAYS("signal"),
    HEADER_SAYS_UNIT("signal", "unit"),
    HEADER_WITHOUT_UNIT("signal"),
    NO_UNIT_OF_IT("unit"),
    CHANGES_UNKNOWN("words"),
    VALUES_FIT("highest", "unit"),
    BUT_VALUES_FIT("highest", "unit"),
    PERCENT_ASSUMED("highest"),
    UNIT_ASSUMED("unit"),
    OUT_OF_ITS_RANGE("count", "readable"),
    NO_VALUES_YET,
    DATE_BESIDE_TIME,
    GIVEN_ALREADY("column", "reason"),
    MAY_BE_IT_AS_WELL("others"),
    EVERY_VALUE("format"),
    OF_OUR_YEARS("format"),
    HEADER_SAYS_MILLISECONDS,
    HEADER_SAYS_MINUTES,
    HEADER_SAYS_SECONDS,
    ROWS_APART_MILLISECONDS("step"),
    ROWS_APART_SECONDS("step"),
    GOES_ALONG("columns"),
    OTHER_THAN("columns"),
    STANDS_STILL("columns"),
    WHICH_CLOCK("what"),
    DAY_MAY_STAND_FIRST("cell"),
    DATE_IN_COLUMN("what", "column");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    ColumnReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
