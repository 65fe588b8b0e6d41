package dev.stayfixed.obd;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What one test of service $06 says. */
enum TestReason implements Kind {
    NOT_RUN,
    MEASURED("value", "unit", "min", "max"),
    COUNTED("value", "min", "max"),
    UNKNOWN_SCALING("value", "min", "max", "scaling"),
    TRUE,
    FALSE;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    TestReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
