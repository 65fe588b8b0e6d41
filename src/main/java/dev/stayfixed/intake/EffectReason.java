package dev.stayfixed.intake;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** Why a drive does nothing for a fault. */
enum EffectReason implements Kind {
    NO_REPAIR_YET,
    BEFORE_THE_REPAIR("at"),
    NO_LONGER_JUDGED;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    EffectReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
