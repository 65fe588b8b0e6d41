package dev.stayfixed.verification;

import dev.stayfixed.reason.Kind;

/** What a statement about a monitor rests on, strongest first. */
public enum EvidenceGrade implements Kind {
    STATUS_BYTE,
    TEST_RESULT,
    CYCLE_READINESS,
    IN_USE_COUNTER,
    READINESS,
    MIL_OFF,
    ENABLING_CONDITIONS,
    DRIVEN;

    /** At least as strong as {@code weakest}. */
    public boolean suffices(EvidenceGrade weakest) {
        return compareTo(weakest) <= 0;
    }
}
