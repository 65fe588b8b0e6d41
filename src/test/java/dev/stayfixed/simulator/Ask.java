package dev.stayfixed.simulator;

import java.util.EnumSet;
import java.util.Set;

/** What a scan asks for. */
public enum Ask {
    VIN,
    READINESS,
    CYCLE_READINESS,
    CONFIRMED,
    PENDING,
    PERMANENT,
    FREEZE_FRAME,
    TEST_RESULTS,
    IN_USE,
    /** ISO 14229-1 $19 02 FF: every code with any bit set; one without is not listed. */
    STATUS,
    /** ISO 14229-1 $19 0A: every code that the car watches, whatever its bits. */
    SUPPORTED_CODES,
    COUNTERS,
    LIVE;

    public static final Set<Ask> EVERYTHING = EnumSet.allOf(Ask.class);
    public static final Set<Ask> CODES = EnumSet.of(CONFIRMED, PENDING, PERMANENT);
    public static final Set<Ask> CODES_AND_READINESS =
            EnumSet.of(CONFIRMED, PENDING, PERMANENT, READINESS, CYCLE_READINESS, COUNTERS);
    /** What a plain code reader offers. */
    public static final Set<Ask> POCKET_READER = EnumSet.of(CONFIRMED, PENDING, READINESS);
}
