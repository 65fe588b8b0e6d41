package dev.stayfixed.drive;

import dev.stayfixed.reason.Reason;

/**
 * The answer to one question about a drive, with its reason.
 *
 * @param held unknown where the record lacks what the question needs
 */
public record Finding(Held held, Reason reason) {

    /** Yes, no, or not to be told from this record. */
    public enum Held {
        YES,
        NO,
        UNKNOWN
    }

    public static Finding yes(Reason reason) {
        return new Finding(Held.YES, reason);
    }

    public static Finding no(Reason reason) {
        return new Finding(Held.NO, reason);
    }

    public static Finding unknown(Reason reason) {
        return new Finding(Held.UNKNOWN, reason);
    }

    public boolean isYes() {
        return held == Held.YES;
    }

    public boolean isNo() {
        return held == Held.NO;
    }
}
