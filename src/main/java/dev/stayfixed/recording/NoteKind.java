package dev.stayfixed.recording;

import dev.stayfixed.reason.Kind;

/** What can be said of single lines of a log that was read. */
public enum NoteKind implements Kind {
    BEFORE_HEADER,
    UNITS_ROW,
    REPEATED_HEADER,
    MOVED_COLUMNS,
    NEXT_PART,
    SHORT_ROW,
    CUT_OFF_ROW,
    LONG_ROW,
    BROKEN_QUOTE,
    UNREADABLE_TIME,
    BLANK_TIME,
    STRAY_TIME,
    REPEATED_TIME,
    BACKWARD_TIME,
    MIDNIGHT,
    GAP,
    UNREADABLE_VALUE,
    IMPLAUSIBLE_VALUE,
    STRAY_VALUE;

    /** Its place among all kinds, from 0. */
    @SuppressWarnings("EnumOrdinal") // counted in an array; nothing that is stored knows this number
    int index() {
        return ordinal();
    }

    /** The whole row was left out. */
    public boolean dropsRow() {
        return this == CUT_OFF_ROW
                || this == LONG_ROW
                || this == BROKEN_QUOTE
                || this == UNREADABLE_TIME
                || this == BLANK_TIME
                || this == STRAY_TIME;
    }
}
