package dev.stayfixed.verification;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What the car still shows, and what ends it. */
enum MemoryReason implements Kind {
    MIL_OFF,
    MIL_UNREAD,
    MIL_WAS_ON("end"),
    MIL_ON("needed", "passes"),
    SHOULD_BE_GONE,
    NOT_CONFIRMED("code"),
    CONFIRMED_UNREAD,
    CONFIRMED("code", "end"),
    UNTIL_MIL_OFF("warmUps"),
    ERASED_AFTER("needed", "warmUps"),
    NOT_PERMANENT("code"),
    PERMANENT_UNREAD,
    PERMANENT("code", "end"),
    UNTIL_MIL_OUT("passes", "needed"),
    AFTER_CLEAR_PASS("pass"),
    AFTER_CLEAR_BOTH("pass", "drive"),
    DRIVE_SEEN("runTime", "fastTime", "idle"),
    DRIVE_NOT_SEEN("runTime", "fastTime", "idle"),
    PASS_SEEN,
    PASS_NOT_SEEN;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    MemoryReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
