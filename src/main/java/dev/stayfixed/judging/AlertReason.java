package dev.stayfixed.judging;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What is told of a drive at once. */
enum AlertReason implements Kind {
    LAMP_NEWLY_ON,
    CODE_IS_NEW("code"),
    CODES_ARE_NEW("codes");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    AlertReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
