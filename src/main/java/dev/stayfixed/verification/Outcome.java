package dev.stayfixed.verification;

import dev.stayfixed.reason.Kind;

/** What one drive says about one fault. */
public enum Outcome implements Kind {
    PASSED,
    FAILED,
    FAILED_CONFIRMED,
    DID_NOT_RUN,
    /** The monitor ran, but the record cannot tell with what result, or the result does not count for this fault. */
    RAN_UNPROVEN,
    CARRIED_OVER,
    CONTRADICTORY;

    public boolean isFail() {
        return this == FAILED || this == FAILED_CONFIRMED;
    }
}
