package dev.stayfixed.verification.held;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** How long a repair has held, and what ended it. */
enum HeldReason implements Kind {
    NOTHING_YET,
    HELD_SO_FAR("held"),
    HELD_THEN("held", "ended"),
    NEVER_HELD("ended"),
    LAMP_CAME,
    CODE_CAME("code"),
    STRETCH("starts", "days"),
    STRETCH_DRIVEN("distance", "starts", "days"),
    STARTS("count"),
    DAYS("count");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    HeldReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
