package dev.stayfixed.judging;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** Where the figures of a planned drive are from, or why none is planned. */
enum OutlineReason implements Kind {
    FIGURES_OF("code", "origin"),
    FIGURES_FROM("code", "origin", "source"),
    NOT_PLANNED("code");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    OutlineReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
