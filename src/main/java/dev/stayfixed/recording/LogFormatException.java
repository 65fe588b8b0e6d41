package dev.stayfixed.recording;

import java.util.OptionalLong;

/** The one way in which a log is refused as a whole: what was found, where, and what to do about it. */
public final class LogFormatException extends RuntimeException {

    private final OptionalLong line;
    private final String found;
    private final String expected;
    private final boolean tooLarge;

    private LogFormatException(OptionalLong line, String found, String expected) {
        this(line, found, expected, false);
    }

    private LogFormatException(OptionalLong line, String found, String expected, boolean tooLarge) {
        super(where(line) + "found " + found + ", expected " + expected);
        this.line = line;
        this.found = found;
        this.expected = expected;
        this.tooLarge = tooLarge;
    }

    static LogFormatException tooLarge(String found, String expected) {
        return new LogFormatException(OptionalLong.empty(), found, expected, true);
    }

    static LogFormatException ofFile(String found, String expected) {
        return new LogFormatException(OptionalLong.empty(), found, expected);
    }

    static LogFormatException atLine(long line, String found, String expected) {
        return new LogFormatException(OptionalLong.of(line), found, expected);
    }

    private static String where(OptionalLong line) {
        return line.isEmpty() ? "" : "line " + line.getAsLong() + ": ";
    }

    /** From 1; empty where the file as a whole is meant. */
    public OptionalLong line() {
        return line;
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
