package dev.stayfixed.verification;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What moved the count beside the drives, and what two readings say of each other. */
enum StepReason implements Kind {
    CLEAR_DID_NOT_TAKE("why"),
    CLEAR_MAY_NOT_HAVE_TAKEN("why"),
    LAMP_RIGHT_AFTER_CLEAR,
    SAID_CLEARED,
    CLEARED_BEFORE,
    CLEARED_AT_END,
    UNSEEN_PASS("code"),
    UNSEEN_FAILURE_CONFIRMED("code"),
    UNSEEN_FAILURE_PENDING("code"),
    UNSEEN_FAILURE_MARKED("code"),
    LEAVES_ONLY("standing"),
    STILL_STORED("code"),
    CYCLES_MISSING("cycles"),
    DISTANCE_MISSING("distance"),
    COUNTER_FELL("counter", "from", "to"),
    CLEAR_DISTANCE_LAGS("counted", "driven"),
    IGNITIONS_FELL("from", "to"),
    ODOMETER_FELL("fall"),
    FELL_WHILE_WARM_UPS_ROSE("fall"),
    COUNTER_OUTGREW("counter", "grown", "most"),
    COUNTER_BEYOND("counter", "found", "most"),
    READINESS_FELL("group"),
    STATUS_NO_LONGER_COMPLETED("code"),
    STATUS_NO_LONGER_FAILED("code"),
    CODE_GONE("code"),
    OTHER_VIN("found", "before"),
    NUMERATOR_OUTRAN("counter"),
    GOES_ON("why");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    StepReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
