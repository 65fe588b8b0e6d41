package dev.stayfixed.verification;

/** The names of the states of {@link VerificationState}, as lists and answers of the interface print them. */
public enum StateName {
    AWAITING_REPAIR,
    WAITING_FOR_FIRST_TRIP,
    PASSING,
    CONFIRMED_FIXED,
    FAILED_ONCE,
    RECURRED;

    /** No drive is needed any more for a verdict on this attempt. */
    public boolean isDecided() {
        return this == CONFIRMED_FIXED || this == RECURRED;
    }

    /** Repaired, and not decided. */
    public boolean isOpen() {
        return this != AWAITING_REPAIR && !isDecided();
    }

    public boolean isFailure() {
        return this == FAILED_ONCE || this == RECURRED;
    }
}
