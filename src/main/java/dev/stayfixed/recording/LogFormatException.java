package dev.stayfixed.recording;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.OptionalLong;

/** The one way in which a log is refused as a whole: what was found, where, and what to do about it. */
public final class LogFormatException extends RuntimeException {

    private final OptionalLong line;
    private final transient Part found;
    private final transient Part expected;
    private final boolean tooLarge;

    private LogFormatException(OptionalLong line, Part found, Part expected) {
        this(line, found, expected, false);
    }

    private LogFormatException(OptionalLong line, Part found, Part expected, boolean tooLarge) {
        super(line + ": " + found + ", " + expected);
        this.line = line;
        this.found = found;
        this.expected = expected;
        this.tooLarge = tooLarge;
    }

    static LogFormatException tooLarge(Part found, Part expected) {
        return new LogFormatException(OptionalLong.empty(), found, expected, true);
    }

    static LogFormatException ofFile(Part found, Part expected) {
        return new LogFormatException(OptionalLong.empty(), found, expected);
    }

    static LogFormatException atLine(long line, Part found, Part expected) {
        return new LogFormatException(OptionalLong.of(line), found, expected);
    }

    /** All of it for people; the message is for those who look for a mistake of ours. */
    public Reason reason() {
        return line.isEmpty()
                ? Reason.of(LogReason.REFUSED_FILE, found, expected)
                : Reason.of(LogReason.REFUSED_AT_LINE, Part.count(line.getAsLong()), found, expected);
    }

    /** From 1; empty where the file as a whole is meant. */
    public OptionalLong line() {
        return line;
    }

    /** The log, or what it unpacks to, is more than the limits allow. */
    public boolean isTooLarge() {
        return tooLarge;
    }

    public Part found() {
        return found;
    }

    public Part expected() {
        return expected;
    }
}
