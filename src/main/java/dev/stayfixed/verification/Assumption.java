package dev.stayfixed.verification;

import dev.stayfixed.reason.Kind;

/**
 * What every verdict rests on beside the readings: how a control unit that obeys 13 CCR 1968.2 (d)(2.2) to (d)(2.5), SAE J1979 and ISO
 * 14229-1 keeps a code. They belong to the rule set and its version, and the report prints them.
 */
public enum Assumption implements Kind {
    OWNER,
    DRIVING_CYCLE,
    FAILING,
    PENDING,
    TRACES,
    LAMP,
    CONFIRMED,
    PERMANENT,
    CLEAR,
    CYCLE_READINESS,
    STATUS_BYTE,
    NUMERATOR,
    TEST_RESULT,
    NEXT_CYCLE,
    ANOTHER_CAR
}
