package dev.stayfixed.verification.bench;

import dev.stayfixed.reason.Kind;

/** What a measurement at the bench checks; common practice when a circuit and its part are tested. */
public enum BenchCheck implements Kind {
    SUPPLY(BenchReason.OF_THE_SUPPLY),
    GROUND(BenchReason.OF_THE_GROUND),
    /** The old part is what was read before the repair, the new one what was read after it. */
    PART(BenchReason.OF_THE_PART),
    LEADS(BenchReason.OF_THE_LEADS),
    OTHER(BenchReason.OF_SOMETHING_ELSE);

    private final BenchReason what;

    BenchCheck(BenchReason what) {
        this.what = what;
    }

    /** What is checked, at more length than by its name. */
    public BenchReason what() {
        return what;
    }
}
