package dev.stayfixed.archive;

import java.time.Instant;

/**
 * A drive is left out of the count: it stays stored and is not judged.
 *
 * @param reason a person's words, 1 to 500 characters
 */
public record LeftOut(String reason, Instant at) {

    /** Characters of a reason. */
    static final int LONGEST = 500;

    public LeftOut {
        if (reason.isBlank() || reason.length() > LONGEST) {
            throw new IllegalArgumentException(
                    "reason: found " + reason.length() + " characters, expected 1 to 500, not all of them blank");
        }
    }
}
