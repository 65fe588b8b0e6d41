package dev.stayfixed.recording;

import java.util.OptionalInt;
import java.util.OptionalLong;

/** The one way in which a log is refused as a whole: what was found, where, and what to do about it. */
public final class LogFormatException extends RuntimeException {

    private final OptionalLong line;
    private final OptionalInt column;
    private final String found;
    private final String expected;
    private final boolean tooLarge;

    private LogFormatException(OptionalLong line, OptionalInt column, String found, String expected) {
        this(line, column, found, expected, false);
    }

    private LogFormatException(OptionalLong line, OptionalInt column, String found, String expected, boolean tooLarge) {
        super(where(line, column) + "found " + found + ", expected " + expected);
        this.line = line;
        this.column = column;
        this.found = found;
        this.expected = expected;
        this.tooLarge = tooLarge;
    }

    static LogFormatException tooLarge(String found, String expected) {
        return new LogFormatException(OptionalLong.empty(), OptionalInt.empty(), found, expected, true);
    }

    static LogFormatException ofFile(String found, String expected) {
        return new LogFormatException(OptionalLong.empty(), OptionalInt.empty(), found, expected);
    }

    static LogFormatException atLine(long line, String found, String expected) {
        return new LogFormatException(OptionalLong.of(line), OptionalInt.empty(), found, expected);
    }

    static LogFormatException atCell(long line, int column, String found, String expected) {
        return new LogFormatException(OptionalLong.of(line), OptionalInt.of(column), found, expected);
    }

    private static String where(OptionalLong line, OptionalInt column) {
        return line.isEmpty()
                ? ""
                : "line " + line.getAsLong() + (column.isEmpty() ? "" : ", column " + column.getAsInt()) + ": ";
    }

    /** From 1; empty where the file as a whole is meant. */
    public OptionalLong line() {
        return line;
    }

    /** From 1; empty where the line as a whole is meant. */
    public OptionalInt column() {
        return column;
    }

    /** The log, or what it unpacks to, is more than the limits allow. */
    public boolean isTooLarge() {
        return tooLarge;
    }

    public String found() {
        return found;
    }

    public String expected() {
        return expected;
    }
}
