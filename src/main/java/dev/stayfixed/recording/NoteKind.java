package dev.stayfixed.recording;

/** What can be said of single lines of a log that was read. */
public enum NoteKind {
    BEFORE_HEADER("line before the header, not used"),
    UNITS_ROW("row of units under the header, read as units"),
    REPEATED_HEADER("header again, skipped"),
    MOVED_COLUMNS("header again with the columns in other places, followed from there on"),
    NEXT_PART("next log of the same zip file, which goes on from the one before"),
    SHORT_ROW("cells missing at the end of the row, taken as blank"),
    CUT_OFF_ROW("last row cut off, dropped"),
    LONG_ROW("more cells than the header has, row dropped (a decimal comma without quotes?)"),
    BROKEN_QUOTE("last row with a quote that is not closed, dropped"),
    UNREADABLE_TIME("time cannot be read, row dropped"),
    BLANK_TIME("no time, row dropped"),
    STRAY_TIME("single row with a time far from its neighbours, dropped"),
    REPEATED_TIME("the time of the row before again: values taken, no time added"),
    BACKWARD_TIME("time before that of the row before: values taken, no time added"),
    MIDNIGHT("time of day starts over, taken as midnight"),
    GAP("more than 5 s without a row: counts for nothing"),
    UNREADABLE_VALUE("value cannot be read, taken as blank"),
    IMPLAUSIBLE_VALUE("value that no working car shows, not used"),
    STRAY_VALUE("single value that jumps away and back as no car can, dropped");

    private final String words;

    NoteKind(String words) {
        this.words = words;
    }

    /** Its place among all kinds, from 0. */
    @SuppressWarnings("EnumOrdinal") // counted in an array; nothing that is stored knows this number
    int index() {
        return ordinal();
    }

    public String words() {
        return words;
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
