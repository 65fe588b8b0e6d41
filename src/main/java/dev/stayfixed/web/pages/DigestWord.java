package dev.stayfixed.web.pages;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What a scan says, in a few lines. */
enum DigestWord implements Kind {
    CONFIRMED_CODES,
    PENDING_CODES,
    PERMANENT_CODES,
    STATUS_BYTES,
    MIL,
    READINESS_SINCE_CLEAR,
    MONITORS_OF_CYCLE,
    MONITORS_IN_WORDS,
    WARM_UPS,
    DISTANCE,
    ENGINE_TIME,
    RUN_TIME,
    FREEZE_FRAME,
    STORED_BY("code"),
    VIN,
    CONTRADICTION,
    NONE,
    NO_MONITOR,
    ALL_COMPLETE,
    INCOMPLETE("monitors"),
    STATED("monitor", "state"),
    STATED_OF_CYCLE("monitor", "state");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    DigestWord(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
