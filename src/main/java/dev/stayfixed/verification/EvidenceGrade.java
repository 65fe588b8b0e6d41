package dev.stayfixed.verification;

/** What a statement about a monitor rests on, strongest first. */
public enum EvidenceGrade {
    STATUS_BYTE("ISO 14229-1 status byte of this code"),
    TEST_RESULT("service $06 result of this monitor"),
    CYCLE_READINESS("PID $41, monitor complete in this driving cycle"),
    IN_USE_COUNTER("service $09 in-use counter of the monitor group"),
    READINESS("PID $01, readiness turned complete since the clear"),
    MIL_OFF("the MIL went out by itself, codes not cleared"),
    ENABLING_CONDITIONS("the fault's own enabling conditions were met and no code came"),
    DRIVEN("it was driven and the lamp stayed off");

    private final String words;

    EvidenceGrade(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** At least as strong as {@code weakest}. */
    public boolean suffices(EvidenceGrade weakest) {
        return compareTo(weakest) <= 0;
    }
}
