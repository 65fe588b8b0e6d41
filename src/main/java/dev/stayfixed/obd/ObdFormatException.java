package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;

/** The one failure of every parser in this package: keeps the whole input and the position at which it stopped making sense. */
public final class ObdFormatException extends RuntimeException {

    private final String input;
    private final int position;
    private final transient Reason reason;

    /**
     * @param input the whole input as it was given
     * @param position zero-based index into {@code input} of the first thing that does not fit
     * @param found what stands there
     * @param expected what should stand there, with the accepted choices
     */
    ObdFormatException(String input, int position, Part found, Part expected) {
        super(position + ": " + found + ", " + expected);
        this.input = input;
        this.position = position;
        this.reason = Reason.of(LineNote.FAILED_AT, Part.count(position), found, expected);
    }

    /** Where, what was found and what was expected, for people; the message is for those who look for a mistake of ours. */
    public Reason reason() {
        return reason;
    }

    public String input() {
        return input;
    }

    public int position() {
        return position;
    }
}
