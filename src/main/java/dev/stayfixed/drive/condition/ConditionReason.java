package dev.stayfixed.drive.condition;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What a condition is, and what a drive made of it. */
public enum ConditionReason implements Kind {
    LOWEST_AMBIENT_ONLY("found"),
    BEFORE_AND_AFTER("before", "after"),
    RUNS_NOT_ALIKE("runs", "signal", "difference", "most");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    ConditionReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
