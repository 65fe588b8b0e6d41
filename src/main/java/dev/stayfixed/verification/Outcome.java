package dev.stayfixed.verification;

/** What one drive says about one fault. */
public enum Outcome {
    PASSED("passed"),
    FAILED("failed"),
    FAILED_CONFIRMED("failed, confirmed"),
    DID_NOT_RUN("did not run"),
    /** The monitor ran, but the record cannot tell with what result, or the result does not count for this fault. */
    RAN_UNPROVEN("ran, proves nothing"),
    CARRIED_OVER("carried over"),
    CONTRADICTORY("contradictory");

    private final String words;

    Outcome(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    public boolean isFail() {
        return this == FAILED || this == FAILED_CONFIRMED;
    }
}
