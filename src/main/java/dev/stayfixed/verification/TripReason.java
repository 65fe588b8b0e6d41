package dev.stayfixed.verification;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What a drive says of a fault, and why it is judged as it is. */
enum TripReason implements Kind {
    STATUS_FAILED("code", "status"),
    STATUS_PASSED("code", "status"),
    STATUS_NOT_COMPLETED("code", "status"),
    RESULT_OUTSIDE("result"),
    RESULT_INSIDE("result"),
    RESULT_NOT_RUN("monitor"),
    CYCLE_NOT_ENABLED("group"),
    CYCLE_NOT_COMPLETE("group"),
    CYCLE_COMPLETE("group"),
    NUMERATOR_UP("counter", "from", "to"),
    READINESS_TURNED("group"),
    CONDITIONS_MET("conditions", "findings"),
    CONDITIONS_MISSED("conditions", "finding"),
    NO_SIGNALS,
    LAMP_WENT_OUT,
    NO_DRIVING_CYCLE,
    SAME_CYCLE,
    LATER_PASSED("seen"),
    LATER_FAILED("seen"),
    CONFIRMED_ANEW("seen"),
    STILL_PENDING_FAILED("code"),
    CAME_PENDING("code"),
    CAME_CONFIRMED("code"),
    PERHAPS_SAME_CYCLE,
    PASSED_UNDER("passed", "similar"),
    TEST_COMPLETED,
    NO_SECOND_FAILURE("ran"),
    NO_CODE_CAME("ran"),
    PENDING_GONE("code"),
    STORED_CHANGED("code"),
    STILL_PENDING("code"),
    PENDING_SINCE_UNKNOWN,
    PENDING_NOT_RUN,
    PENDING_RAN,
    PENDING_UNHEARD,
    CLEARED_IN_DRIVE,
    TOO_WEAK("seen", "weakest"),
    NOT_SIMILAR("similar"),
    RAN_HERE_OR_UNRECORDED("ran"),
    RESULT_NOT_KNOWN("ran"),
    NOTHING_SAYS_IT_RAN("test", "how"),
    NOTHING_HELD,
    STATUS_AGAINST_RESULT("result"),
    NO_FREEZE_FRAME,
    SIMILAR,
    NO_POINT("needed"),
    NONE_SIMILAR("needed"),
    NEEDED_WARM("band", "speed", "share", "load"),
    NEEDED_COLD("band", "speed", "share", "load"),
    CYCLES_WITHOUT("cycles");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    TripReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
