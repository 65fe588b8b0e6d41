package dev.stayfixed.intake;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What speaks against a saved mapping beside what the log itself shows. */
enum MappingReason implements Kind {
    OTHER_SEPARATOR("separator", "confirmed"),
    CONFIRMED_FOR_ANOTHER("columns", "units");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    MappingReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
