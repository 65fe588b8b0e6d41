package dev.stayfixed.verification;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** Where a repaired fault stands. */
public enum StandingReason implements Kind {
    AWAITING_REPAIR,
    WAITING_FOR_FIRST_TRIP,
    PASSING("passes", "needed"),
    CONFIRMED_FIXED,
    FAILED_ONCE,
    FAILED_AFTER_FIXED,
    RECURRED,
    RECURRED_AFTER_FIXED;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    StandingReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
