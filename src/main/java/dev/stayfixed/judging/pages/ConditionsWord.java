package dev.stayfixed.judging.pages;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** Where the conditions of a page are from, and the signals that they speak of. */
enum ConditionsWord implements Kind {
    FROM_SERVICE_INFORMATION,
    FROM_TYPICAL,
    FROM_SOURCE("origin", "source"),
    SIGNAL_IN("signal", "unit");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    ConditionsWord(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
