package dev.stayfixed.judging;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What is said of the runs of a check beside what they show. */
public enum CheckReason implements Kind {
    RUN_GONE("side", "start"),
    RUN_ON_OTHER_SIDE("side", "start", "repair"),
    COMMON_PRACTICE,
    SERVICE_INFORMATION("source"),
    AXES("low", "high", "time");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    CheckReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
